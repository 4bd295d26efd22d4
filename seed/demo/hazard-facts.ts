/** What of the demo's work could hurt somebody, task by task. Materials, tools and rooms add their own facts. */
import { NO_TASK_HAZARDS, type HazardFact, type TaskHazards } from '@/lib/build';

/** Facts, share of the time that tools run, millilitres sprayed. */
type Entry = readonly [facts: readonly HazardFact[], toolShare?: number, sprayed?: number];

const spray = (sprayed: number): Entry => [['spraying', 'respirator-relied-on', 'hobby-space'], 0.3, sprayed];
const weld: readonly HazardFact[] = ['arc-welding', 'grinding', 'gas-cylinders'];

const ENTRIES: Readonly<Record<string, Entry>> = {
  'task-caliper-pistons': [['air-into-bore', 'brake-hydraulics-open', 'blow-gun', 'brake-goes-on-road'], 0.2],
  'task-caliper-clean': [['brake-hydraulics-open', 'solvent-wiping']],
  'task-caliper-reseal': [['brake-hydraulics-open', 'brake-goes-on-road']],
  'task-master': [['brake-hydraulics-open', 'spring-under-load']],
  'task-brake-bleed': [['brake-hydraulics-open', 'brake-goes-on-road']],
  'task-drums': [['brake-goes-on-road']],
  'task-front-strip': [['asbestos-possible', 'spring-under-load', 'respirator-relied-on']],
  'task-rear-strip': [['asbestos-possible', 'spring-under-load', 'respirator-relied-on']],
  'task-rims-prime': spray(180), 'task-rims-coat-1': spray(220), 'task-rims-coat-2': spray(220),
  'task-zinc-prime': spray(400), 'task-body-high-build': spray(700), 'task-tin-etch': spray(200), 'task-tin-high-build': spray(250),
  'task-tin-coat-1': spray(250), 'task-tin-coat-2': spray(250),
  'task-rims-abrade': [['grinding', 'disturbs-old-paint', 'lead-or-chromate', 'respirator-relied-on'], 0.5],
  'task-sign-flat': [['disturbs-old-paint', 'lead-or-chromate', 'respirator-relied-on'], 0.4],
  'task-block': [['dust-sanding'], 0.5],
  'task-slats': [['dust-sanding', 'drying-oil'], 0.3],
  'task-tin-blast': [['blasting'], 0.6],
  'task-tin-beat': [['arc-welding', 'gas-cylinders'], 0.2],
  'task-floor-cut': [['grinding', 'disturbs-old-paint'], 0.4],
  'task-cross-members': [weld, 0.3], 'task-chassis-weld': [[...weld, 'structural-weld'], 0.3], 'task-floor-rivet': [weld, 0.2],
  'task-vent-holes': [['turning-or-drilling'], 0.4], 'task-studs': [['turning-or-drilling'], 0.4], 'task-arm-bush': [['turning-or-drilling'], 0.3],
  'task-zinc-profile': [['solvent-wiping', 'zinc-or-cadmium'], 0.3],
  'task-frame-face': [['blow-gun'], 0.2],
  'task-cases-wash': [['blow-gun'], 0.3],
  'task-carb': [['fuel-opened', 'petrol', 'solvent-wiping']],
  'task-hub-bearings': [['heating']], 'task-bottom-end': [['heating']],
  'task-fork-build': [['spring-under-load']], 'task-chassis-wheel': [['under-raised-load']], 'task-rolling': [['under-raised-load', 'heavy-lift']],
  'task-body-off': [['heavy-lift']], 'task-engine-out': [['hoisting', 'heavy-lift']], 'task-engine-in': [['hoisting', 'heavy-lift']], 'task-body-mount': [['heavy-lift']],
  'task-separate': [['under-raised-load', 'heavy-lift']],
  'task-drain': [['fuel-opened', 'petrol']], 'task-tank-test': [['fuel-opened', 'petrol', 'fuel-tank']],
  'task-battery': [['battery-charging']],
  'task-polish': [['turning-or-drilling', 'light-metal-dust', 'respirator-relied-on'], 0.5],
  'task-first-start': [['engine-running', 'petrol']],
};

/** The one departure of the demo: the manual puts no figure on air, the crew does. */
const DEPARTURES: Readonly<Record<string, TaskHazards['departure']>> = {
  'task-caliper-pistons': {
    manualValue: 'hydraulic pressure only', ownValue: 'air from zero up to 2 bar, pad in the bridge', reason: 'the old hoses do not hold pressure any more',
    warning: "The maker says hydraulic only. We don't advise this; at 2 bar we stop and send it away.",
  },
};

/** Hazard facts of a task of the demo; none for those that are not listed. */
export function hazardsOf(taskId: string): TaskHazards {
  const [facts, toolShare = 1, sprayed = null] = ENTRIES[taskId] ?? [[]];
  const departure = DEPARTURES[taskId] ?? null;
  return { ...NO_TASK_HAZARDS, facts, toolShare, sprayed, departure };
}
