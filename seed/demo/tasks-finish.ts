/** Together again: rolling, wired, coupled, started, and once round the yard. */
import type { TaskDraft } from './draft';

export const finishTasks: readonly TaskDraft[] = [
  {
    id: 'task-fork-build', name: 'Rebuild the forks', category: 'assembly', episode: 'ep-powder', place: 'place-bench',
    parts: [['part-fork', 'off', 'rebuilt']], effort: [90, 120, 180], crew: ['mechanics'], coverage: 'inserts and teaching', shots: [['insert', 'Stanchion rolled on glass', 8]],
    layOut: ['Seals and bushes', 'Fork oil measured', 'Glass plate', 'Eye protection'], cautions: ['Spring behind the cap: stand aside for the last thread.'], manual: "maker's manual, section G2 (front fork)",
  },
  {
    id: 'task-rolling', name: 'Build the rolling frame: yokes, forks, arm, wheels', category: 'assembly', episode: 'ep-tyres', place: 'place-main-bay',
    parts: [['part-frame', 'faced', 'rolling'], ['part-yokes', 'powder-coated', 'fitted'], ['part-fork', 'rebuilt', 'fitted'], ['part-swinging-arm', 'bushed', 'fitted'], ['part-stand', 'powder-coated', 'fitted'], ['part-front-rim', 'tyred', 'fitted'], ['part-rear-rim', 'tyred', 'fitted'], ['part-front-hub', 'laced', 'fitted'], ['part-rear-hub', 'laced', 'fitted']],
    effort: [150, 200, 290], crew: ['mechanics', 'anybody'], equipment: ['equip-lift', 'equip-torque'], coverage: 'moved camera', shots: [['during', 'Down off the lift, on its own wheels', 12, 'must']],
    layOut: ['Head bearings, greased', 'New split pins', 'Torque card', 'Wheel chock', 'Straps'], cautions: ['Strap the frame before it has a front wheel.', 'Split pins are used once; tighten to the slot, never past the maximum.'], manual: "maker's manual, sections G1, H2, J1",
  },
  {
    id: 'task-engine-in', name: 'Engine and gearbox into the rolling frame', category: 'assembly', episode: 'ep-wiring', place: 'place-main-bay',
    parts: [['part-frame', 'rolling', 'engine-in'], ['part-engine', 'dressed', 'fitted'], ['part-gearbox', 'rebuilt', 'fitted']], effort: [120, 160, 230], oneGo: true, crew: ['mechanics', 'anybody'], equipment: ['equip-hoist', 'equip-lift', 'equip-torque'], coverage: 'moved camera', shots: [['during', 'Engine goes home past new paint', 12, 'must']],
    layOut: ['Strap with load tag', 'Frame padding', 'Engine bolts in order', 'Boots and gloves'], cautions: ['Nobody under the load; the one on the chain gives the word.'], manual: "maker's manual, section B1 (engine fitting)",
  },
  {
    id: 'task-primary', name: 'Clutch, primary chain and rear chain', category: 'assembly', episode: null, place: 'place-main-bay',
    parts: [['part-frame', 'engine-in', null], ['part-chains', 'new', 'fitted']], effort: [80, 110, 160], crew: ['mechanics'], equipment: ['equip-torque'], coats: ['mat-thread-locker'], coverage: 'none', layOut: ['Clutch tool', 'Chain breaker', 'Thread locker', 'Eye protection'], cautions: ['Clutch springs even, face aside.'], manual: "maker's manual, section E1 (clutch)",
  },
  {
    id: 'task-loom-make', name: 'Make the new loom on the board', category: 'electrics', episode: 'ep-wiring', place: 'place-bench',
    parts: [['part-loom', 'drawn', 'made']], effort: [180, 240, 340], crew: ['electrics'], equipment: ['equip-solder', 'equip-meter'], coverage: 'time-lapse', shots: [['time-lapse', 'Nails, string and forty wires', 12, 'must'], ['insert', 'A good crimp and a bad one', 8]],
    layOut: ['Board with nails', 'Cable by colour', 'Crimp tool', 'Fume extractor for solder', 'Cloth tape'], manual: "maker's manual, section R (electrical)",
  },
  {
    id: 'task-headlamp', name: 'Rewire headlamp and build the lamps', category: 'electrics', episode: 'ep-wiring', place: 'place-bench',
    parts: [['part-headlamp', 'off', 'rewired'], ['part-lamps', 'off', 'rebuilt']], effort: [80, 110, 160], crew: ['electrics'], equipment: ['equip-solder', 'equip-meter'], coverage: 'inserts and teaching', shots: [['insert', 'Earth wire beside the shell, not through paint', 8]], layOut: ['Bulbs', 'Grommets', 'Meter leads'],
  },
  {
    id: 'task-battery', name: 'Fill and charge the new battery', category: 'electrics', episode: null, place: 'place-yard',
    parts: [['part-battery', 'new', 'charged']], effort: [25, 35, 60], oneGo: true, crew: ['electrics'], coverage: 'none', needsDaylight: true, layOut: ['Acid gloves and apron', 'Face shield', 'Water and soda', 'Charger, off when the clips go on'],
    cautions: ['In the open air: charging makes hydrogen. Rings off, no spark.', "The battery maker's sheet gives the rate."],
  },
  {
    id: 'task-bars', name: 'Handlebar, controls and cables', category: 'assembly', episode: null, place: 'place-main-bay',
    parts: [['part-handlebar', 'replated', 'fitted'], ['part-controls', 'replated', 'fitted'], ['part-frame', 'rolling', null]], effort: [70, 95, 140], crew: ['mechanics'], coverage: 'none', layOut: ['Cables, oiled', 'Padded clamps'], manual: "maker's manual, section K1 (controls)",
  },
  {
    id: 'task-tin-fit', name: 'Mudguards, toolbox and tank on', category: 'assembly', episode: 'ep-wiring', place: 'place-main-bay',
    parts: [['part-front-mudguard', 'painted', 'fitted'], ['part-rear-mudguard', 'painted', 'fitted'], ['part-toolbox', 'painted', 'fitted'], ['part-tank', 'painted', 'fitted'], ['part-frame', 'engine-in', null]], effort: [90, 120, 180], crew: ['mechanics'], coverage: 'moved camera', shots: [['after', 'Tank drops onto its rubbers', 8]], layOut: ['Nylon washers', 'Tank rubbers', 'Soft tape on spanners'],
  },
  {
    id: 'task-loom-fit', name: 'Fit the loom, lamps and battery; test each circuit', category: 'electrics', episode: 'ep-wiring', place: 'place-main-bay',
    parts: [['part-frame', 'engine-in', 'wired'], ['part-loom', 'made', 'fitted'], ['part-headlamp', 'rewired', 'fitted'], ['part-lamps', 'rebuilt', 'fitted'], ['part-battery', 'charged', 'fitted']], effort: [140, 190, 280], crew: ['electrics'], equipment: ['equip-meter', 'equip-solder'], coverage: 'locked-off', shots: [['during', 'Lamps come on one by one', 10, 'must']],
    layOut: ['Fuse, smallest first', 'Meter', 'Grommets', 'Rings off'], cautions: ['Earth lead last on, first off.', 'First power through a lamp in series.'], manual: "maker's manual, section R (electrical)",
  },
  {
    id: 'task-seat-exhaust', name: 'Saddle and exhaust on', category: 'assembly', episode: null, place: 'place-main-bay',
    parts: [['part-saddle', 'covered', 'fitted'], ['part-exhaust', 'replated', 'fitted'], ['part-frame', 'wired', null]], effort: [45, 65, 100], crew: ['mechanics'], coverage: 'none', layOut: ['New clamps', 'Lint-free gloves: finger marks burn in', 'Anti-seize'],
  },
  {
    id: 'task-first-start', name: 'First start in the yard', category: 'setting up', episode: 'ep-first-round', place: 'place-yard',
    parts: [['part-frame', 'coupled', 'started']], effort: [50, 75, 140], oneGo: true, irreversible: true, crew: ['engine', 'camera', 'anybody'], coverage: 'moved camera', needsDaylight: true, noisy: true,
    shots: [['before', 'Wide: outfit on chocks, extinguisher in frame', 5, 'must'], ['before', 'Medium: oil level and petrol tap', 4, 'must'], ['before', 'Close: clock of the speedometer, with date card', 4, 'must'], ['during', 'Kick, kick, and the first sound', 15, 'must']],
    layOut: ['Fresh petrol, earthed can', 'Foam extinguisher', 'Ear protection', 'Fan behind the engine', 'Cut-out wire in one hand'], cautions: ['Outdoors only: exhaust gas has no warning and no filter stops it.', 'One person on the cut-out, one on the extinguisher, chocks in.'], manual: "maker's manual, section A3 (starting)",
  },
  {
    id: 'task-cold-torque', name: 'Check torques cold and look for leaks', category: 'setting up', episode: null, place: 'place-main-bay',
    parts: [['part-frame', 'started', 'checked']], effort: [50, 70, 110], crew: ['mechanics'], equipment: ['equip-torque'], coverage: 'none', layOut: ['Torque card', 'White paper under the engine', 'Log book'], manual: "maker's manual, section A5 (first service)",
  },
  {
    id: 'task-yard-round', name: 'Once round the yard, bread in the box', category: 'filming', episode: 'ep-first-round', place: 'place-yard',
    parts: [['part-frame', 'checked', 'road-ready'], ['part-body', 'mounted', null], ['part-caliper', 'proven', null]], effort: [50, 70, 110], oneGo: true, crew: ['presenting', 'camera', 'anybody'], coverage: 'moved camera', needsDaylight: true, noisy: true,
    shots: [['during', 'Left turn, sidecar wheel down', 12, 'must'], ['after', 'Same walk round as the first day', 12, 'must']], layOut: ['Helmet, gloves, boots', 'Ballast in the box', 'Cones', 'Extinguisher', 'Fresh loaf'],
    cautions: ['Private yard at walking pace; not a road test. An inspection by a qualified person comes before any road.'], manual: "maker's manual, section A4 (sidecar riding)",
  },
  {
    id: 'task-closing', name: 'Piece to camera: what we would do again', category: 'filming', episode: 'ep-first-round', place: 'place-filming-corner',
    parts: [['part-frame', 'checked', null]], effort: [25, 35, 55], oneGo: true, crew: ['presenting', 'camera'], coverage: 'piece to camera', shots: [['piece to camera', 'Promises made and kept', 25, 'must', ['part-tank', 'fitted']]], layOut: ['List of promises from the log', 'Two lamps'],
  },
  {
    id: 'task-threads', name: 'Lay out thread gauges and forms', category: 'filming', episode: 'ep-threads', place: 'place-filming-corner',
    parts: [], effort: [25, 40, 60], oneGo: true, crew: ['mechanics'], coverage: 'inserts and teaching', shots: [['insert', 'Five threads side by side with a gauge', 15, 'must']], layOut: ['Thread gauges', 'Bolts of the outfit', 'Felt'],
  },
  {
    id: 'task-threads-talk', name: 'Piece to camera: five threads on one machine', category: 'filming', episode: 'ep-threads', place: 'place-filming-corner',
    parts: [], effort: [25, 35, 50], oneGo: true, crew: ['presenting', 'camera'], coverage: 'piece to camera', shots: [['piece to camera', 'Which spanner lies', 20, 'must']], layOut: ['Labelled bolts', 'Notes'],
  },
];
