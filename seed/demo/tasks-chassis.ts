/** The sidecar chassis: weld, vent, zinc, paint inside the window, and back on its wheel. */
import type { TaskDraft } from './draft';

export const chassisTasks: readonly TaskDraft[] = [
  {
    id: 'task-body-off', name: 'Lift the box off the sidecar chassis', category: 'strip', episode: 'ep-down-to-frame', place: 'place-main-bay',
    parts: [['part-chassis', 'separated', 'bare'], ['part-body', 'as-found', 'off'], ['part-door', 'as-found', 'off'], ['part-sidecar-mudguard', 'as-found', 'off'], ['part-trailing-arm', 'as-found', 'off']],
    effort: [60, 85, 140], oneGo: true, crew: ['mechanics', 'anybody'], equipment: ['equip-hoist', 'equip-jack'], coverage: 'moved camera',
    shots: [['during', 'Box rises, daylight through the floor', 10, 'must']],
    layOut: ['Slings with load tag', 'Trestles', 'Gloves and boots', 'Packing for the strap edges'], cautions: ['About 70 kg: hoist and two people, nobody under it.'], manual: "maker's manual, section N4 (sidecar body)",
  },
  {
    id: 'task-arm-strip', name: 'Strip the trailing arm and press out its bushes', category: 'strip', episode: null, place: 'place-bench',
    parts: [['part-trailing-arm', 'off', 'bare']], effort: [40, 60, 100], crew: ['mechanics'], equipment: ['equip-press'], coverage: 'none', layOut: ['Drifts', 'Eye protection', 'Penetrating oil'],
  },
  {
    id: 'task-chassis-weld', name: 'Cut out the rust and weld new outrigger tubes', category: 'welding', episode: 'ep-zinc', place: 'place-main-bay',
    parts: [['part-chassis', 'bare', 'welded']], effort: [150, 210, 320], crew: ['welding'], equipment: ['equip-welder', 'equip-grinder'], coverage: 'locked-off', noisy: true, dusty: true,
    shots: [['during', 'Old outrigger comes away in the hand', 8, 'must'], ['insert', 'Fish-mouth joint before the arc', 8]],
    layOut: ['Welding mask and jacket', 'Screens for the camera side', 'Fume extraction arm', 'Extinguisher in frame', 'Fire blanket', 'Face shield, ears, guard on the grinder'],
    cautions: ['Weld before zinc, never on zinc: fume from galvanized steel makes people ill.', 'Everything that burns 10 m away; fire watch of 60 minutes.', 'Arc footage goes through the flash check before it is shown.'],
  },
  {
    id: 'task-vent-holes', name: 'Drill vent and drain holes for the zinc', category: 'repair', episode: 'ep-zinc', place: 'place-main-bay',
    parts: [['part-chassis', 'welded', 'vented']], effort: [45, 60, 100], oneGo: true, crew: ['welding'], coverage: 'inserts and teaching', noisy: true,
    shots: [['insert', 'Drawing with every closed tube and its two holes', 10, 'must']],
    layOut: ['Vent drawing agreed with the galvanizer', 'Step drill and centre punch', 'Deburring tool', 'Eye and ear protection'],
    cautions: ['A closed tube can burst in the bath: every one has a hole high and a hole low, 10 mm or more; the galvanizer has the last word.', 'Holes after the bath are bare steel: all of them now.'],
  },
  {
    id: 'task-zinc-profile', name: 'Check the zinc, degrease and abrade it for paint', category: 'clean', episode: 'ep-zinc', place: 'place-main-bay',
    parts: [['part-chassis', 'galvanized', 'profiled'], ['part-trailing-arm', 'galvanized', null]], effort: [70, 90, 140], oneGo: true, crew: ['paint'], coverage: 'inserts and teaching', dusty: true,
    shots: [['insert', 'Water spreads instead of beading', 8, 'must'], ['piece to camera', 'Why new zinc sheds paint', 10]],
    layOut: ['Degreaser, water-based', 'Red non-woven pads', 'Thread taps for filled holes', 'P3 mask', 'Gloves'],
    cautions: ['Zinc dust: mask on, vacuum, no blowing down.', 'Runs and spikes of zinc cut: gloves, file them first.'],
  },
  {
    id: 'task-zinc-prime', name: 'Prime the galvanized chassis inside the window', category: 'paint', episode: 'ep-zinc', place: 'place-paint-tent',
    parts: [['part-chassis', 'profiled', 'primed']], effort: [50, 70, 110], oneGo: true, crew: ['paint'], equipment: ['equip-tent-fan'], coats: ['mat-galv-primer'], coverage: 'locked-off', minimumTemperature: 12,
    shots: [['during', 'First brush of primer on bright zinc', 8, 'must']],
    layOut: ['Primer stirred, batch noted', 'Brushes', 'A2P3 half mask, fit-checked', 'Solvent gloves', 'Hygrometer and surface thermometer', 'Lidded rag can'],
    cautions: ['The tin comes first: where its window differs from ours, the tin wins.', 'Fan on before the lid is off; heater off and cold.'],
  },
  {
    id: 'task-chassis-coat-1', name: 'First brushed coat on the chassis', category: 'paint', episode: null, place: 'place-paint-tent',
    parts: [['part-chassis', 'primed', 'first-coat']], effort: [50, 65, 95], oneGo: true, crew: ['paint'], equipment: ['equip-tent-fan'], coats: ['mat-coach-enamel'], coverage: 'none', minimumTemperature: 12,
    layOut: ['Enamel strained', 'Two brushes', 'Tack rag', 'A2P3 half mask', 'Gloves'], cautions: ['Fan on, heater off and cold before the tin is opened.'],
  },
  {
    id: 'task-chassis-coat-2', name: 'Second brushed coat on the chassis', category: 'paint', episode: null, place: 'place-paint-tent',
    parts: [['part-chassis', 'first-coat', 'painted']], effort: [50, 65, 95], oneGo: true, crew: ['paint'], equipment: ['equip-tent-fan'], coats: ['mat-coach-enamel'], coverage: 'none', minimumTemperature: 12,
    layOut: ['Enamel strained', 'Tack rag', 'A2P3 half mask', 'Gloves'], cautions: ['After four days the first coat must be abraded again: look at the date on the card.'],
  },
  {
    id: 'task-chassis-wheel', name: 'Fit trailing arm, spring unit and sidecar wheel', category: 'assembly', episode: 'ep-tyres', place: 'place-main-bay',
    parts: [['part-chassis', 'painted', 'on-wheels'], ['part-trailing-arm', 'galvanized', 'fitted'], ['part-sidecar-rim', 'tyred', 'fitted'], ['part-sidecar-hub', 'laced', 'fitted']],
    effort: [80, 110, 170], crew: ['mechanics'], equipment: ['equip-press', 'equip-torque', 'equip-jack'], coverage: 'locked-off',
    shots: [['after', 'Chassis rolls across the bay on one wheel', 8, 'must']],
    layOut: ['New bushes', 'Axle grease', 'New split pin', 'Torque card'], cautions: ['Stands and chocks first.', 'Rubber bushes are tightened at ride height, not in the air.'], manual: "maker's manual, section N3 (sidecar wheel)",
  },
  {
    id: 'task-couple', name: 'Couple the sidecar and set lean and toe-in', category: 'setting up', episode: 'ep-first-round', place: 'place-main-bay',
    parts: [['part-chassis', 'on-wheels', 'coupled'], ['part-couplings', 'zinc-plated', 'fitted'], ['part-frame', 'wired', 'coupled']], effort: [120, 160, 240], oneGo: true, crew: ['mechanics', 'mechanics'], equipment: ['equip-alignment', 'equip-torque', 'equip-jack'], coverage: 'inserts and teaching',
    shots: [['insert', 'Boards along the wheels: toe-in read at both ends', 14, 'must'], ['insert', 'Plumb line: lean-out on the head tube', 10, 'must']],
    layOut: ['Straight boards', 'Plumb line', 'Two rules', 'Log sheet for lean and toe-in', 'Ballast bags for the rider'],
    cautions: ["Figures are the maker's, not ours: lean-out and toe-in from the manual, noted on screen.", 'Chocks both sides; nobody between machine and box while a strut is loose.'], manual: "maker's manual, section N5 (alignment)",
  },
];
