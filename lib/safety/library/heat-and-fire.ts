/** Arc, flame, fuel, gas and what burns. */
import { CHEMICAL_GLOVES, EYES, HEAT_GLOVES, WELD_CLOTHES, WELD_MASK, type HazardDraft } from './draft';

export const heatAndFire: readonly HazardDraft[] = [
  {
    id: 'welding', name: 'Welding arc and fume', severity: 'II', trigger: [['arc-welding'], ['gas-welding'], ['zinc-or-cadmium', 'hot-cutting']],
    controls: [
      ['E', 'Bolt or rivet it'], ['N', 'Extraction at the arc indoors', 'shown'], ['N', 'Screens for the camera and everybody else', 'shown'],
      ['A', 'Zinc and plating ground off first; chlorinated cleaner nowhere near'],
    ],
    equipment: [WELD_MASK, WELD_CLOTHES], signs: ['W027', 'P075', 'M019', 'M057'],
    caution: { screen: 'Do not look at the arc. Extraction on, screens up.', spoken: 'Look away from the arc, and so does the lens. Extraction is on, the plating is off, and the screen is up for everybody else.' },
    show: 'Extraction; flash warning',
    deferral: { text: 'the part is structural, steering or under pressure', when: [['structural-weld']] },
    sources: [
      ['read', 'Shades (29 CFR 1915.153): stick 60-160 A 8, 160-250 A 10; MIG 60-500 A 10; TIG 50-150 A 8, 150-500 A 10'],
      ['read', 'HSE 2019: extraction for all indoor welding'],
    ],
  },
  {
    id: 'hot-work', name: 'Fire from hot work', severity: 'I', trigger: [['arc-welding'], ['gas-welding'], ['hot-cutting'], ['grinding', 'indoors'], ['grinding', 'petrol']],
    controls: [
      ['E', 'Cold method: saw, bolts'], ['N', '35 ft clear of what burns, or covered', 'shown'],
      ['A', 'Fire watch for at least 30 minutes after the last spark, extinguisher in the frame', 'shown'],
    ],
    equipment: [], signs: ['F001', 'F016'],
    caution: { screen: 'Sparks travel 35 ft. Extinguisher here, fire watch after.', spoken: 'Sparks go further than you think. Everything that burns is out of reach, the extinguisher is in the frame, and somebody stays half an hour after.' },
    show: 'Extinguisher in frame',
    deferral: { text: 'it is the fabric of a building, or a closed container', when: [['hot-cutting', 'confined'], ['arc-welding', 'fuel-tank'], ['gas-welding', 'fuel-tank'], ['hot-cutting', 'fuel-tank']] },
    sources: [['read', '29 CFR 1910.252(a): 35 ft, fire watch at least 30 minutes'], ['memory', 'NFPA 51B: 60 minutes']],
  },
  {
    id: 'fuel', name: 'Fuel tank or fuel line', severity: 'I', trigger: [['fuel-opened'], ['petrol'], ['fuel-tank', 'arc-welding'], ['fuel-tank', 'gas-welding'], ['fuel-tank', 'hot-cutting'], ['fuel-tank', 'grinding']],
    controls: [
      ['E', 'Leave it closed'], ['N', 'Fuel retriever, bonded to the tank', 'shown'], ['A', 'Outdoors, battery disconnected, nothing lit', 'shown'],
    ],
    equipment: [CHEMICAL_GLOVES, EYES], signs: ['P003', 'W021', 'F001'],
    caution: { screen: 'Never weld or cut an empty tank. Empty is not empty.', spoken: 'An empty tank is the one that explodes, and a diesel tank does it too. Outdoors, battery off, into a proper can.' },
    show: 'The retriever, outdoors',
    deferral: { text: 'any hot work on a tank', when: [['fuel-tank', 'arc-welding'], ['fuel-tank', 'gas-welding'], ['fuel-tank', 'hot-cutting'], ['fuel-tank', 'grinding']] },
    sources: [['read', 'HSE: petrol, fuel retrievers; diesel tanks explode as well']],
  },
  {
    id: 'gas-cylinders', name: 'Gas cylinders', severity: 'I', trigger: [['gas-cylinders'], ['gas-welding']],
    controls: [['E', 'Stored outside'], ['N', 'Chained upright, flashback arrestors fitted', 'shown'], ['A', 'No oil or grease on oxygen; valves shut when nobody is there']],
    equipment: [EYES], signs: ['M046', 'W029', 'W028'],
    caution: { screen: 'Chained upright, arrestors on, no oil near oxygen.', spoken: 'Bottles are chained, arrestors are on, and nothing oily comes near oxygen.' },
    show: 'The chain',
    deferral: { text: 'a cylinder is damaged: the supplier takes it', when: [] },
    sources: [['read', 'Oxygen apart from fuel gas: 20 ft or a 5 ft wall']],
  },
  {
    id: 'exhaust', name: 'Carbon monoxide', severity: 'I', trigger: [['engine-running'], ['heater-or-flame', 'indoors']],
    controls: [['E', 'Outside, with the doors open'], ['N', 'Tailpipe hose to the outside', 'shown'], ['A', 'Alarm in the room; anybody with a headache goes out', 'shown']],
    equipment: [], signs: ['W041', 'M057'],
    caution: { screen: 'Exhaust kills indoors. Hose out, alarm on.', spoken: 'No mask filters carbon monoxide. The hose goes outside, the alarm is on the bench, and a headache means everybody out.' },
    show: 'Hose and alarm',
    deferral: { text: 'anybody has symptoms: out, and call for help', when: [['engine-running', 'injury-or-symptoms']] },
    sources: [['read', 'HSE: carbon monoxide; UK WEL 20 ppm over 8 h, 100 ppm over 15 min']],
  },
  {
    id: 'hot-parts', name: 'Hot parts and heated fits', severity: 'III', trigger: [['heating']],
    controls: [['E', 'Cold press with the right tool'], ['N', 'Oven or induction heater with a thermometer'], ['A', 'A marked place to cool down; nothing left lying', 'shown']],
    equipment: [HEAT_GLOVES, EYES], signs: ['W017'],
    caution: { screen: 'It looks the same hot. Mark it and let it cool.', spoken: 'A hub at a hundred degrees looks like a cold one. It lies in the marked place until I say so.' },
    show: 'Where hot parts lie',
    sources: [['practice', 'Workshop practice']],
  },
];
