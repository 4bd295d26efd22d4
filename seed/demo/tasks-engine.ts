/** The engine: apart, measured, away, and together again in its own room. */
import type { TaskDraft } from './draft';

export const engineTasks: readonly TaskDraft[] = [
  {
    id: 'task-top-end', name: 'Head and barrel off, carburettor and clutch cover too', category: 'strip', episode: 'ep-oversize', place: 'place-engine-room',
    parts: [['part-engine', 'out', 'top-off'], ['part-head', 'on-engine', 'off'], ['part-barrel', 'on-engine', 'off'], ['part-carburettor', 'on-engine', 'off'], ['part-chaincase', 'on-engine', 'off']],
    effort: [90, 120, 190], crew: ['engine'], equipment: ['equip-engine-stand'], coverage: 'moved camera', shots: [['during', 'Barrel rises: the line where the rings stuck', 10, 'must']],
    layOut: ['Tray for pushrods in order', 'Rags for the crankcase mouth', 'Gasket scraper, wood', 'Gloves'], cautions: ['Old gaskets may hold asbestos: wet, whole, bagged; never a wire wheel.'], manual: "maker's manual, section B4 (top end)",
  },
  {
    id: 'task-studs', name: 'Drill out two seized crankcase studs', category: 'machining', episode: 'ep-oversize', place: 'place-engine-room',
    parts: [['part-crankcases', 'on-engine', 'studs-out']], effort: [60, 85, 150], oneGo: true, irreversible: true, crew: ['engine', 'anybody'], equipment: ['equip-heat-gun'], coverage: 'inserts and teaching',
    shots: [['before', 'Wide: cases on the stand, both studs marked', 5, 'must'], ['before', 'Medium: broken studs and the joint face', 5, 'must'], ['before', 'Close: stud end centre-punched, with scale', 6, 'must'], ['insert', 'Drill bush keeps it square', 8, 'must']],
    layOut: ['Drill bush', 'Left-hand drills', 'Penetrating oil', 'Heat gun', 'Eye protection', 'Rags and tape over the crankcase mouth'],
    cautions: ['Penetrating oil first, heat after it has gone, never both at once.', 'No loose gloves at the drill; one holds the lamp, one drills.'], manual: "maker's manual, section B6 (crankcase)",
  },
  {
    id: 'task-split', name: 'Split the crankcases and lift the crankshaft', category: 'strip', episode: 'ep-oversize', place: 'place-engine-room',
    parts: [['part-crankcases', 'studs-out', 'split'], ['part-crankshaft', 'in-cases', 'out'], ['part-engine', 'top-off', 'apart']], effort: [70, 95, 160], oneGo: true, crew: ['engine'], equipment: ['equip-engine-stand', 'equip-heat-gun'], coverage: 'locked-off',
    shots: [['during', 'Cases part without a lever', 8, 'must']], layOut: ['Soft mallet', 'Heat-proof gloves', 'Shim envelope, labelled'], cautions: ['Never a screwdriver in a joint face.'], manual: "maker's manual, section B6 (crankcase)",
  },
  {
    id: 'task-measure', name: 'Measure bore, piston and big end', category: 'machining', episode: 'ep-oversize', place: 'place-engine-room',
    parts: [['part-barrel', 'off', 'measured'], ['part-crankshaft', 'out', 'measured']], effort: [60, 80, 120], oneGo: true, crew: ['engine'], equipment: ['equip-measuring'], coverage: 'inserts and teaching',
    shots: [['insert', 'Bore gauge at three heights, two ways', 12, 'must'], ['piece to camera', 'What oversize means and what it costs', 12]], layOut: ['Bore gauge zeroed on a ring', 'Sheet for twelve readings', 'Barrel at room temperature since the day before'], manual: "maker's manual, section B2 (wear limits)",
  },
  {
    id: 'task-head-strip', name: 'Strip valves and springs from the head', category: 'strip', episode: null, place: 'place-engine-room',
    parts: [['part-head', 'off', 'bare']], effort: [45, 60, 95], crew: ['engine'], coverage: 'none', layOut: ['Valve spring compressor', 'Eye protection', 'Collet tray'], cautions: ['Springs are loaded: face out of line, compressor seated before the collets move.'], manual: "maker's manual, section B5 (cylinder head)",
  },
  {
    id: 'task-cases-wash', name: 'Wash cases and clear every oilway', category: 'clean', episode: null, place: 'place-bench',
    parts: [['part-crankcases', 'split', 'clean']], effort: [80, 110, 170], crew: ['anybody'], equipment: ['equip-washer', 'equip-compressor'], coverage: 'none', noisy: true,
    layOut: ['Water-based cleaner, warm', 'Bottle brushes', 'Blow gun with a side-vented tip', 'Chip guard, eye and ear protection'], cautions: ['Air for cleaning: low pressure at the tip, never at skin or clothes.'], manual: "maker's manual, section B7 (lubrication)",
  },
  {
    id: 'task-polish', name: 'Polish the chaincase', category: 'clean', episode: null, place: 'place-blast-corner',
    parts: [['part-chaincase', 'off', 'polished']], effort: [70, 100, 150], crew: ['anybody'], equipment: ['equip-polisher'], coverage: 'none', noisy: true, dusty: true,
    layOut: ['Mops, one to a compound', 'Face shield', 'P3 mask', 'Ear protection'], cautions: ['No gloves, no sleeves at the mop; work on the lower half, edge trailing.', 'Aluminium dust burns: sweep it up, keep it dry and away from sparks.'],
  },
  {
    id: 'task-carb', name: 'Clean and set the carburettor', category: 'clean', episode: null, place: 'place-bench',
    parts: [['part-carburettor', 'off', 'cleaned']], effort: [60, 85, 130], crew: ['engine'], coverage: 'none', layOut: ['Carburettor cleaner, not chlorinated', 'Jet gauges', 'Gloves and eye protection', 'New float needle'], manual: "maker's manual, section D1 (carburettor)",
  },
  {
    id: 'task-gearbox', name: 'Open the gearbox, new bearings and bushes', category: 'repair', episode: 'ep-gearbox', place: 'place-engine-room',
    parts: [['part-gearbox', 'out', 'rebuilt']], effort: [180, 240, 360], crew: ['engine'], equipment: ['equip-press', 'equip-heat-gun', 'equip-measuring'], coverage: 'inserts and teaching',
    shots: [['insert', 'Selector forks against the gauge', 10, 'must'], ['insert', 'Shims: end float felt, then measured', 8]], layOut: ['Bearing set', 'Selector gauge', 'Heat-proof gloves', 'Shim packet'], manual: "maker's manual, section E2 (gearbox)",
  },
  {
    id: 'task-gearbox-talk', name: 'Piece to camera: three gears on the bench', category: 'filming', episode: 'ep-gearbox', place: 'place-filming-corner',
    parts: [['part-gearbox', 'rebuilt', null]], effort: [20, 30, 45], oneGo: true, crew: ['presenting', 'camera'], coverage: 'piece to camera', shots: [['piece to camera', 'Power path drawn with a finger', 20, 'must']], layOut: ['Clean gear cluster on felt', 'Two lamps', 'Notes'],
  },
  {
    id: 'task-barrel-paint', name: 'Brush cylinder black onto the bored barrel', category: 'paint', episode: null, place: 'place-paint-tent',
    parts: [['part-barrel', 'bored', 'painted']], effort: [30, 40, 60], oneGo: true, crew: ['paint'], equipment: ['equip-tent-fan'], coats: ['mat-engine-black'], coverage: 'none', minimumTemperature: 12, layOut: ['Masking for bore and faces', 'Brush', 'A2P3 half mask', 'Gloves'], cautions: ['Fan on, heater off and cold first.'],
  },
  {
    id: 'task-head-build', name: 'Lap valves and build the head', category: 'assembly', episode: 'ep-turning-over', place: 'place-engine-room',
    parts: [['part-head', 'seats-cut', 'built']], effort: [80, 110, 170], crew: ['engine'], coverage: 'inserts and teaching', shots: [['insert', 'Grey ring all round the seat', 8]], layOut: ['Lapping stick and paste', 'New springs and collets', 'Eye protection', 'Spirit for the leak test'], cautions: ['Springs under load: face out of line.'], manual: "maker's manual, section B5 (cylinder head)",
  },
  {
    id: 'task-bottom-end', name: 'Build the bottom end: crankshaft in, cases closed', category: 'assembly', episode: 'ep-turning-over', place: 'place-engine-room',
    parts: [['part-crankcases', 'clean', 'closed'], ['part-crankshaft', 'trued', 'fitted']], effort: [120, 160, 240], oneGo: true, crew: ['engine', 'anybody'], equipment: ['equip-engine-stand', 'equip-heat-gun', 'equip-torque', 'equip-measuring'], coats: ['mat-gasket'], coverage: 'inserts and teaching',
    shots: [['during', 'Warm case drops over the bearing', 10, 'must'], ['insert', 'End float on the dial gauge', 8, 'must']], layOut: ['Assembly oil', 'Jointing compound, thin', 'Shims chosen', 'Lint-free gloves', 'Heat-proof gloves'], cautions: ["Torques and order from the maker's page, read out before each ring."], manual: "maker's manual, section B6 (crankcase)",
  },
  {
    id: 'task-top-build', name: 'Piston, barrel and head on; set the tappets', category: 'assembly', episode: 'ep-turning-over', place: 'place-engine-room',
    parts: [['part-engine', 'apart', 'built'], ['part-barrel', 'painted', 'fitted'], ['part-piston', 'matched', 'fitted'], ['part-head', 'built', 'fitted'], ['part-crankcases', 'closed', null]], effort: [120, 160, 240], oneGo: true, crew: ['engine', 'anybody'], equipment: ['equip-engine-stand', 'equip-torque'], coverage: 'inserts and teaching',
    shots: [['insert', 'Ring gaps in the bore, feeler in', 10, 'must'], ['during', 'First turn by hand, compression', 10, 'must']], layOut: ['Ring clamp', 'New gaskets', 'Gudgeon pin circlips, new', 'Feeler gauges'], manual: "maker's manual, section B4 (top end)",
  },
  {
    id: 'task-magneto-fit', name: 'Fit magneto, carburettor and chaincase; time the spark', category: 'assembly', episode: 'ep-turning-over', place: 'place-engine-room',
    parts: [['part-engine', 'built', 'dressed'], ['part-magneto', 'rewound', 'fitted'], ['part-carburettor', 'cleaned', 'fitted'], ['part-chaincase', 'polished', 'fitted']], effort: [90, 120, 180], crew: ['engine'], equipment: ['equip-engine-stand'], coverage: 'inserts and teaching', shots: [['insert', 'Cigarette paper slips as the points open', 8, 'must']],
    layOut: ['Timing stick and degree disc', 'Thin paper', 'New gaskets'], manual: "maker's manual, section C1 (ignition timing)",
  },
];
