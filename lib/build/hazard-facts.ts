/**
 * What about a task may hurt somebody, as a closed list of plain facts. A person states them on the task, others follow
 * from its materials and equipment; `lib/safety` finds the hazards from them.
 */

const FACTS = {
  // What is done.
  'air-into-bore': ['method', 'compressed air into a caliper or cylinder'],
  'blow-gun': ['method', 'cleaning with a blow gun'],
  'brake-hydraulics-open': ['method', 'brake hydraulics opened'],
  'caliper-halves-split': ['method', 'caliper halves unbolted'],
  spraying: ['method', 'spraying a coat'],
  'solvent-wiping': ['method', 'cleaning or wiping with solvent'],
  'disturbs-old-paint': ['method', 'sanding, scraping or burning old paint'],
  blasting: ['method', 'abrasive blasting'],
  grinding: ['method', 'grinding or cutting with a wheel'],
  'arc-welding': ['method', 'arc welding'],
  'gas-welding': ['method', 'gas welding, brazing or a torch'],
  'hot-cutting': ['method', 'cutting hot: plasma, flame'],
  'fuel-opened': ['method', 'fuel tank, tap or line opened'],
  'under-raised-load': ['method', 'work under a raised vehicle'],
  hoisting: ['method', 'lifting with a hoist or crane'],
  'turning-or-drilling': ['method', 'lathe, pillar drill or wire wheel running'],
  'spring-under-load': ['method', 'a spring is compressed or let go'],
  'heavy-lift': ['method', 'lifting more than 16 kg by hand'],
  'battery-charging': ['method', 'charging or jump-starting a lead-acid battery'],
  'high-voltage-open': ['method', 'high-voltage pack opened'],
  'mains-open': ['method', 'mains wiring or a machine panel open'],
  'engine-running': ['method', 'engine or fuel heater running'],
  'dust-sanding': ['method', 'sanding wood, filler, aluminium or powder coat'],
  'high-pressure-fluid': ['method', 'airless gun, grease gun or diesel injection under pressure'],
  'tyre-inflating': ['method', 'inflating or seating a tyre'],
  'laser-or-uv': ['method', 'laser cleaning or UV lamp'],
  'sealed-system-open': ['method', 'airbag or refrigerant circuit opened'],
  'acid-or-electrolysis': ['method', 'acid dip or electrolysis'],
  heating: ['method', 'parts heated above touching'],
  'respirator-relied-on': ['method', 'somebody relies on a respirator'],
  'brake-goes-on-road': ['method', 'goes on the road afterwards'],
  // What is used.
  'gas-cylinders': ['tool', 'gas cylinders'],
  'loud-tool': ['tool', 'a tool at or above 80 dB(A)'],
  'vibrating-tool': ['tool', 'a hand-held vibrating tool'],
  // What is in it.
  isocyanate: ['content', 'isocyanate in the data sheet'],
  solvent: ['content', 'solvent'],
  chlorinated: ['content', 'chlorinated solvent'],
  petrol: ['content', 'petrol or its vapour'],
  'lead-or-chromate': ['content', 'lead or chromate paint, tested or not ruled out'],
  'asbestos-possible': ['content', 'old friction lining, gasket or lagging'],
  'zinc-or-cadmium': ['content', 'galvanized or plated metal'],
  'light-metal-dust': ['content', 'aluminium or magnesium dust'],
  'silica-sand': ['content', 'silica sand'],
  'drying-oil': ['content', 'drying oil on rags'],
  hydrofluoric: ['content', 'hydrofluoric acid'],
  // What the part is like.
  seized: ['part', 'seized: does not move at low pressure'],
  'no-makers-procedure': ['part', 'the maker gives no procedure'],
  'fuel-tank': ['part', 'a tank that held fuel'],
  'split-rim': ['part', 'split rim'],
  'door-spring': ['part', 'door torsion spring'],
  'structural-weld': ['part', 'structural, steering or pressure part'],
  lagging: ['part', 'asbestos lagging'],
  'damaged-disc': ['part', 'wheel or disc damaged or out of date'],
  'damaged-battery': ['part', 'battery swollen, leaking or frozen'],
  'fixed-wiring': ['part', 'fixed wiring of the building'],
  'vehicle-lift-fault': ['part', 'fault on a lift or hoist'],
  // Where, and what is around.
  indoors: ['surroundings', 'indoors'],
  confined: ['surroundings', 'in a pit, tank or other confined room'],
  'no-extraction': ['surroundings', 'no extraction running'],
  'heater-or-flame': ['surroundings', 'burner, heater or open flame lit'],
  'vapour-degreasing': ['surroundings', 'vapour degreaser'],
  'defeated-interlock': ['surroundings', 'guard or interlock bypassed'],
  'hobby-space': ['surroundings', 'rented or home workshop'],
  // Who.
  alone: ['people', 'one person alone'],
  'gloves-worn': ['people', 'gloves are worn'],
  'asthma-in-crew': ['people', 'somebody in the crew has asthma'],
  'children-near': ['people', 'children live or play there'],
  'injury-or-symptoms': ['people', 'somebody is hurt or feels ill'],
} as const satisfies Readonly<Record<string, readonly [FactGroup, string]>>;

/** What kind of fact it is, for the form. */
export type FactGroup = 'method' | 'tool' | 'content' | 'part' | 'surroundings' | 'people';

export type HazardFact = keyof typeof FACTS;

export function isHazardFact(text: string): text is HazardFact {
  return Object.hasOwn(FACTS, text);
}

/** All facts, in the order of the form. */
export const HAZARD_FACTS: readonly HazardFact[] = Object.keys(FACTS).filter(isHazardFact);

/** @example factWords('grinding') // 'grinding or cutting with a wheel' */
export function factWords(fact: HazardFact): string {
  return FACTS[fact][1];
}

export function factGroup(fact: HazardFact): FactGroup {
  return FACTS[fact][0];
}
