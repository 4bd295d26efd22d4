/** The delivery box: the old sign, the rotten floor, and a long way of filler, sealer and enamel. */
import type { TaskDraft } from './draft';

const brushCautions = ['The tin comes first: temperature, window and thinning as it says.', 'Brushed, not sprayed: fan on all the same, heater off and cold before the lid is off.'] as const;
const brushKit = ['Enamel strained, batch noted', 'Laying-off brush', 'Tack rag', 'A2P3 half mask, fit-checked', 'Solvent gloves', 'Hygrometer', 'Lidded rag can'];

export const bodyTasks: readonly TaskDraft[] = [
  {
    id: 'task-sign-record', name: 'Trace the old sign onto film, letter by letter', category: 'filming', episode: 'ep-cutting-floor', place: 'place-filming-corner',
    parts: [['part-body', 'off', 'traced'], ['part-door', 'off', 'traced']], effort: [60, 80, 120], oneGo: true, crew: ['anybody', 'camera'], coverage: 'inserts and teaching',
    shots: [['insert', 'Tracing film over the loaf and the name', 12, 'must'], ['insert', 'Colour card beside each colour', 8, 'must']], layOut: ['Tracing film', 'Soft pencils', 'Colour card', 'Raking light'],
  },
  {
    id: 'task-sign-flat', name: 'Flat the hand-painted sign to metal', category: 'strip', episode: 'ep-cutting-floor', place: 'place-main-bay',
    parts: [['part-body', 'traced', 'stripped'], ['part-door', 'traced', 'stripped']], effort: [120, 160, 240], oneGo: true, irreversible: true, crew: ['paint', 'camera'], coverage: 'moved camera', dusty: true,
    shots: [['before', 'Wide: the whole side in raking light', 8, 'must'], ['before', 'Medium: name and loaf, square on', 8, 'must', ['part-body', 'traced'], ['part-door', 'traced']], ['before', 'Close: brush strokes with scale and colour card', 10, 'must'], ['during', 'The last letter goes', 12, 'must']],
    layOut: ['Lead test kit', 'Wet paper and blocks', 'P3 mask', 'Gloves and overall', 'Dust sheet, bag and tie', 'Hand-wash bowl'],
    cautions: ['Old sign paint is taken as leaded: wet only, no torch, no dry sander, bag the slurry.', 'No food or drink in the bay; wash before the break.'],
  },
  {
    id: 'task-floor-cut', name: 'Cut the rotten floor out of the box', category: 'repair', episode: 'ep-cutting-floor', place: 'place-main-bay',
    parts: [['part-body', 'stripped', 'floor-out']], effort: [80, 110, 170], oneGo: true, irreversible: true, crew: ['welding', 'anybody'], equipment: ['equip-grinder'], coverage: 'moved camera', noisy: true, dusty: true,
    shots: [['before', 'Wide: floor from above, box on trestles', 8, 'must'], ['before', 'Medium: each rotten edge, numbered', 8, 'must'], ['before', 'Close: cross-member seats with rule, all four', 10, 'must'], ['during', 'Floor drops out in one piece', 10, 'must']],
    layOut: ['Cut line in two colours of tape', 'Thin discs in date, speed matched', 'Face shield, ears, P3 mask', 'Overall with tight cuffs', 'Diagonal braces tacked in', 'Extinguisher in frame', 'Fire blanket'],
    cautions: ['Brace the box before the first cut: it springs when the floor goes.', 'Guard on in every shot; damaged disc in the bin.', 'Fire watch of 60 minutes; sawdust and grease out from under it first.'],
  },
  {
    id: 'task-cross-members', name: 'Weld in new cross-members', category: 'welding', episode: 'ep-seams', place: 'place-main-bay',
    parts: [['part-body', 'floor-out', 'framed']], effort: [150, 200, 300], crew: ['welding'], equipment: ['equip-welder', 'equip-grinder'], coverage: 'locked-off', noisy: true, dusty: true,
    shots: [['during', 'Plug welds down the new channel', 10, 'must']], layOut: ['Welding mask and jacket', 'Screens', 'Fume extraction arm', 'Clamps', 'Extinguisher in frame', 'Fire blanket'],
    cautions: ['No sealer, no cleaner, no paint near the arc; extraction at the weld.', 'Arc footage goes through the flash check.'],
  },
  {
    id: 'task-weld-through', name: 'Zinc-rich primer on the flanges', category: 'paint', episode: null, place: 'place-main-bay',
    parts: [['part-body', 'framed', 'flanges-primed'], ['part-floor', 'cut', 'primed']], effort: [35, 50, 80], oneGo: true, crew: ['paint'], coats: ['mat-zinc-primer'], coverage: 'none', layOut: ['Small brushes', 'A2P3 half mask', 'Gloves', 'Doors open'], cautions: ['No arc and no grinder until it is dry.'],
  },
  {
    id: 'task-floor-cut-sheet', name: 'Mark out and cut the new floor', category: 'repair', episode: null, place: 'place-bench',
    parts: [['part-floor', 'sheet', 'cut'], ['part-body', 'floor-out', null]], effort: [60, 80, 120], crew: ['anybody'], coverage: 'none', layOut: ['Card template', 'Sheet snips', 'Cut-resistant gloves', 'Deburring tool'], cautions: ['Sheet edges cut: gloves until they are dressed.'],
  },
  {
    id: 'task-floor-rivet', name: 'Rivet and plug-weld the floor down', category: 'welding', episode: 'ep-seams', place: 'place-main-bay',
    parts: [['part-body', 'flanges-primed', 'floored'], ['part-floor', 'primed', 'fitted']], effort: [100, 140, 210], crew: ['welding', 'anybody'], equipment: ['equip-welder'], coverage: 'locked-off', noisy: true, shots: [['after', 'Somebody stands in the box', 8, 'must']],
    layOut: ['Rivets and gun', 'Welding mask', 'Fume extraction arm', 'Extinguisher in frame'], cautions: ['Primer fumes at the plug welds: extraction on, head out of the plume.'],
  },
  {
    id: 'task-seam-seal', name: 'Seal every seam of the box', category: 'filler', episode: 'ep-seams', place: 'place-main-bay',
    parts: [['part-body', 'floored', 'sealed']], effort: [70, 95, 140], oneGo: true, crew: ['anybody'], coats: ['mat-seam-sealer'], coverage: 'inserts and teaching', shots: [['insert', 'Bead tooled with a wet finger in a glove', 10, 'must']],
    layOut: ['Sealer, data sheet read: no isocyanate', 'Masking tape', 'Gloves', 'Spatulas'], cautions: ['The data sheet comes first; a tube with isocyanate in it does not come in.', 'It skins from the outside: wait for the middle.'],
  },
  {
    id: 'task-fill', name: 'First filler over the patches', category: 'filler', episode: 'ep-seams', place: 'place-main-bay',
    parts: [['part-body', 'sealed', 'filled'], ['part-door', 'stripped', 'filled']], effort: [60, 80, 120], oneGo: true, crew: ['paint'], coats: ['mat-filler'], coverage: 'inserts and teaching', minimumTemperature: 12, shots: [['insert', 'Hardener measured, six minutes on the clock', 8, 'must']],
    layOut: ['Filler and hardener', 'Mixing board', 'Spreaders', 'Timer', 'A2P3 half mask', 'Gloves', 'Doors open'], cautions: ['Small mixes: it is hot and hard in six minutes.'],
  },
  {
    id: 'task-block', name: 'Block the filler flat', category: 'clean', episode: 'ep-seams', place: 'place-main-bay',
    parts: [['part-body', 'filled', 'flat'], ['part-door', 'filled', 'flat']], effort: [120, 180, 280], crew: ['anybody'], coverage: 'time-lapse', dusty: true, shots: [['time-lapse', 'Long block, low lamp, two hours in ten seconds', 10]],
    layOut: ['Long blocks', 'Papers by number', 'Vacuum with fine filter', 'P3 mask', 'Raking lamp'], cautions: ['Filler dust: vacuum on the block, mask on, tent zipped shut.'],
  },
  {
    id: 'task-body-etch', name: 'Etch prime box and door by brush and roller', category: 'paint', episode: null, place: 'place-paint-tent',
    parts: [['part-body', 'flat', 'etched'], ['part-door', 'flat', 'etched']], effort: [60, 80, 115], oneGo: true, crew: ['paint'], equipment: ['equip-tent-fan'], coats: ['mat-etch-primer'], coverage: 'none', minimumTemperature: 12, layOut: brushKit, cautions: brushCautions,
  },
  {
    id: 'task-body-high-build', name: 'High-build primer on box and door', category: 'paint', episode: 'ep-filler-patience', place: 'place-paint-tent',
    parts: [['part-body', 'etched', 'primed'], ['part-door', 'etched', 'primed']], effort: [70, 90, 130], oneGo: true, crew: ['paint'], equipment: ['equip-tent-fan', 'equip-spray-gun', 'equip-compressor'], coats: ['mat-high-build'], coverage: 'moved camera', minimumTemperature: 12,
    shots: [['insert', 'Respirator: filter class, date, fit check', 8, 'must'], ['during', 'Guide coat like soot', 6]],
    layOut: ['A2P3 half mask, filters dated, fit-checked', 'Anti-static overall', 'Solvent gloves', 'Eye protection', 'Data sheet: no isocyanate in it', 'Guide coat'],
    cautions: ["The data sheet comes first: isocyanate in it means the booth outside, whatever the number of packs.", 'Local rules on spraying indoors come before all of this; where they say no, it is brushed or goes to the booth.', 'Heater off and cold, fan on, nobody without a mask; a carbon mask alone does not stop mist.'],
  },
  {
    id: 'task-body-flat', name: 'Wet-flat box and door', category: 'clean', episode: 'ep-filler-patience', place: 'place-main-bay',
    parts: [['part-body', 'primed', 'flatted'], ['part-door', 'primed', 'flatted']], effort: [150, 210, 300], crew: ['anybody'], coverage: 'locked-off', shots: [['during', 'Water runs in one sheet', 8]], layOut: ['Wet paper and blocks', 'Bucket', 'Gloves', 'Floor cloth'],
  },
  {
    id: 'task-body-coat-1', name: 'Brush the first coat of coach enamel', category: 'paint', episode: 'ep-filler-patience', place: 'place-paint-tent',
    parts: [['part-body', 'flatted', 'first-coat'], ['part-door', 'flatted', 'first-coat']], effort: [75, 95, 125], oneGo: true, crew: ['paint'], equipment: ['equip-tent-fan'], coats: ['mat-coach-enamel'], coverage: 'inserts and teaching', minimumTemperature: 12, shots: [['insert', 'Lay on, cross, lay off: one panel unbroken', 12, 'must']], layOut: brushKit, cautions: brushCautions,
  },
  {
    id: 'task-body-coat-2', name: 'Brush the finish coat', category: 'paint', episode: 'ep-filler-patience', place: 'place-paint-tent',
    parts: [['part-body', 'first-coat', 'enamelled'], ['part-door', 'first-coat', 'enamelled']], effort: [75, 95, 125], oneGo: true, crew: ['paint'], equipment: ['equip-tent-fan'], coats: ['mat-coach-enamel'], coverage: 'none', minimumTemperature: 12, layOut: brushKit, cautions: [...brushCautions, 'After four days the first coat wants abrading again.'],
  },
  {
    id: 'task-wax', name: 'Cavity wax into cross-members and seams', category: 'other', episode: null, place: 'place-yard',
    parts: [['part-body', 'lettered', 'waxed']], effort: [40, 55, 80], oneGo: true, crew: ['anybody'], coats: ['mat-cavity-wax'], coverage: 'none', needsDaylight: true, layOut: ['Lance', 'A2P3 half mask', 'Gloves', 'Masking for drain holes'], cautions: ['In the open air; nothing hot near it until tomorrow.'],
  },
  {
    id: 'task-slats', name: 'Plane and oil the ash load slats', category: 'repair', episode: 'ep-sign', place: 'place-bench',
    parts: [['part-slats', 'rough', 'oiled']], effort: [90, 120, 180], crew: ['woodwork'], coats: ['mat-wood-oil'], coverage: 'locked-off', shots: [['during', 'Shavings, then the grain comes up', 8]],
    layOut: ['Plane, sharp', 'Oil and cloths', 'Metal can with lid and water for the rags'], cautions: ['Oily rags heat themselves: into the lidded can with water, out of the arch tonight.'],
  },
  {
    id: 'task-body-mount', name: 'Mount the box, door, mudguard and slats', category: 'assembly', episode: 'ep-sign', place: 'place-main-bay',
    parts: [['part-body', 'waxed', 'mounted'], ['part-door', 'lettered', 'hung'], ['part-slats', 'oiled', 'fitted'], ['part-sidecar-mudguard', 'painted', 'fitted'], ['part-chassis', 'on-wheels', null]], effort: [110, 150, 220], oneGo: true, crew: ['woodwork', 'anybody'], equipment: ['equip-hoist'], coverage: 'moved camera',
    shots: [['during', 'Box comes down on its rubbers', 10, 'must'], ['after', 'The sign, square on, same frame as the before-shot', 8, 'must', ['part-body', 'mounted'], ['part-door', 'hung']]], layOut: ['Slings, padded', 'Rubber mounts', 'Soft cloths', 'Boots'], cautions: ['About 75 kg: hoist and two people, nobody under it.'], manual: "maker's manual, section N4 (sidecar body)",
  },
];
