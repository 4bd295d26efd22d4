/**
 * What about a task may hurt somebody, as a closed list of plain facts. A person states them on the task, others follow
 * from its materials and equipment; `lib/safety` finds the hazards from them.
 */

const FACTS = {
  // What is done.
  'air-into-bore': 'compressed air into a caliper or cylinder',
  'blow-gun': 'cleaning with a blow gun',
  'brake-hydraulics-open': 'brake hydraulics opened',
  'caliper-halves-split': 'caliper halves unbolted',
  spraying: 'spraying a coat',
  'solvent-wiping': 'cleaning or wiping with solvent',
  'disturbs-old-paint': 'sanding, scraping or burning old paint',
  blasting: 'abrasive blasting',
  grinding: 'grinding or cutting with a wheel',
  'arc-welding': 'arc welding',
  'gas-welding': 'gas welding, brazing or a torch',
  'hot-cutting': 'cutting hot: plasma, flame',
  'fuel-opened': 'fuel tank, tap or line opened',
  'under-raised-load': 'work under a raised vehicle',
  hoisting: 'lifting with a hoist or crane',
  'turning-or-drilling': 'lathe, pillar drill or wire wheel running',
  'spring-under-load': 'a spring is compressed or let go',
  'heavy-lift': 'lifting more than 16 kg by hand',
  'battery-charging': 'charging or jump-starting a lead-acid battery',
  'high-voltage-open': 'high-voltage pack opened',
  'mains-open': 'mains wiring or a machine panel open',
  'engine-running': 'engine or fuel heater running',
  'dust-sanding': 'sanding wood, filler, aluminium or powder coat',
  'high-pressure-fluid': 'airless gun, grease gun or diesel injection under pressure',
  'tyre-inflating': 'inflating or seating a tyre',
  'laser-or-uv': 'laser cleaning or UV lamp',
  'sealed-system-open': 'airbag or refrigerant circuit opened',
  'acid-or-electrolysis': 'acid dip or electrolysis',
  heating: 'parts heated above touching',
  'respirator-relied-on': 'somebody relies on a respirator',
  'brake-goes-on-road': 'goes on the road afterwards',
  // What is used.
  'gas-cylinders': 'gas cylinders',
  'loud-tool': 'a tool at or above 80 dB(A)',
  'vibrating-tool': 'a hand-held vibrating tool',
  // What is in it.
  isocyanate: 'isocyanate in the data sheet',
  solvent: 'solvent',
  chlorinated: 'chlorinated solvent',
  petrol: 'petrol or its vapour',
  'lead-or-chromate': 'lead or chromate paint, tested or not ruled out',
  'asbestos-possible': 'old friction lining, gasket or lagging',
  'zinc-or-cadmium': 'galvanized or plated metal',
  'light-metal-dust': 'aluminium or magnesium dust',
  'silica-sand': 'silica sand',
  'drying-oil': 'drying oil on rags',
  hydrofluoric: 'hydrofluoric acid',
  // What the part is like.
  seized: 'seized: does not move at low pressure',
  'no-makers-procedure': 'the maker gives no procedure',
  'fuel-tank': 'a tank that held fuel',
  'split-rim': 'split rim',
  'door-spring': 'door torsion spring',
  'structural-weld': 'structural, steering or pressure part',
  lagging: 'asbestos lagging',
  'damaged-disc': 'wheel or disc damaged or out of date',
  'damaged-battery': 'battery swollen, leaking or frozen',
  'fixed-wiring': 'fixed wiring of the building',
  'vehicle-lift-fault': 'fault on a lift or hoist',
  // Where, and what is around.
  indoors: 'indoors',
  confined: 'in a pit, tank or other confined room',
  'no-extraction': 'no extraction running',
  'heater-or-flame': 'burner, heater or open flame lit',
  'vapour-degreasing': 'vapour degreaser',
  'defeated-interlock': 'guard or interlock bypassed',
  'hobby-space': 'rented or home workshop',
  // Who.
  alone: 'one person alone',
  'gloves-worn': 'gloves are worn',
  'asthma-in-crew': 'somebody in the crew has asthma',
  'children-near': 'children live or play there',
  'injury-or-symptoms': 'somebody is hurt or feels ill',
} as const satisfies Readonly<Record<string, string>>;

export type HazardFact = keyof typeof FACTS;

export function isHazardFact(text: string): text is HazardFact {
  return Object.hasOwn(FACTS, text);
}

/** All facts, in the order of the form. */
export const HAZARD_FACTS: readonly HazardFact[] = Object.keys(FACTS).filter(isHazardFact);

/** @example factWords('grinding') // 'grinding or cutting with a wheel' */
export function factWords(fact: HazardFact): string {
  return FACTS[fact];
}
