/** Rims and tinware: bare metal to finish coat, and the frame's way back from the powder shop. */
import type { TaskDraft } from './draft';

const fan = 'equip-tent-fan';
const gun = 'equip-spray-gun';
const air = 'equip-compressor';
const sprayKit = ['A2P3 half mask, filters dated, fit-checked', 'Anti-static overall', 'Solvent gloves', 'Eye protection', 'Data sheet: no isocyanate in it', 'Tack rag', 'Lidded rag can'];
const sprayCautions = [
  "The tin and its data sheet come first; decide on what is in it, not on the number of packs: with isocyanate it goes to the booth outside.",
  'Warm the tent first, then heater off, unplugged and cold; fan on before the lid comes off and until it smells of nothing.',
  'Local rules on spraying indoors come before all of this; where they say no, it is brushed or goes to the booth.',
  'Filter label shown to camera; nobody without a mask in the tent.',
] as const;

export const paintTasks: readonly TaskDraft[] = [
  {
    id: 'task-rims-abrade', name: 'Strip three rims to metal in the yard', category: 'clean', episode: 'ep-three-rims', place: 'place-yard',
    parts: [['part-front-rim', 'unlaced', 'abraded'], ['part-rear-rim', 'unlaced', 'abraded'], ['part-sidecar-rim', 'unlaced', 'abraded']],
    effort: [100, 140, 220], crew: ['paint'], equipment: ['equip-grinder'], coverage: 'locked-off', needsDaylight: true, noisy: true, dusty: true,
    shots: [['during', 'Half a rim bright, half as found', 8, 'must']],
    layOut: ['Lead test kit', 'P3 mask and face shield', 'Ear protection', 'Strip discs and flap wheels', 'Dust sheet to catch the flakes', 'Grinder with guard'],
    cautions: ['Test the old paint for lead first; where it shows, wet work only, and wash before tea.', 'Wire and discs throw pieces: face shield over eye protection, nobody in line.'],
  },
  {
    id: 'task-rims-prime', name: 'Etch and prime the rims', category: 'paint', episode: 'ep-three-rims', place: 'place-paint-tent',
    parts: [['part-front-rim', 'abraded', 'primed'], ['part-rear-rim', 'abraded', 'primed'], ['part-sidecar-rim', 'abraded', 'primed']],
    effort: [60, 80, 120], oneGo: true, crew: ['paint'], equipment: [fan, gun, air], coats: ['mat-etch-primer'], coverage: 'moved camera', minimumTemperature: 12,
    shots: [['insert', 'Mask fit check, filter label read out', 6, 'must'], ['during', 'Etch goes on as a veil', 8]], layOut: sprayKit, cautions: sprayCautions,
  },
  {
    id: 'task-rims-coat-1', name: 'First finish coat on the rims', category: 'paint', episode: 'ep-three-rims', place: 'place-paint-tent',
    parts: [['part-front-rim', 'primed', 'first-coat'], ['part-rear-rim', 'primed', 'first-coat'], ['part-sidecar-rim', 'primed', 'first-coat']],
    effort: [50, 65, 100], oneGo: true, crew: ['paint'], equipment: [fan, gun, air], coats: ['mat-spray-enamel'], coverage: 'moved camera', minimumTemperature: 12,
    shots: [['during', 'Wet edge runs round the rim', 8, 'must']], layOut: sprayKit, cautions: sprayCautions,
  },
  {
    id: 'task-rims-coat-2', name: 'Second finish coat on the rims', category: 'paint', episode: 'ep-three-rims', place: 'place-paint-tent',
    parts: [['part-front-rim', 'first-coat', 'painted'], ['part-rear-rim', 'first-coat', 'painted'], ['part-sidecar-rim', 'first-coat', 'painted']],
    effort: [50, 65, 100], oneGo: true, crew: ['paint'], equipment: [fan, gun, air], coats: ['mat-spray-enamel'], coverage: 'none', minimumTemperature: 12,
    layOut: [...sprayKit, 'Date card for the rack: two weeks before a tyre lever'], cautions: sprayCautions,
  },
  {
    id: 'task-hub-bearings', name: 'Fit new bearings to the powder-coated hubs', category: 'assembly', episode: 'ep-powder', place: 'place-bench',
    parts: [['part-front-hub', 'powder-coated', 'bearings-in'], ['part-rear-hub', 'powder-coated', 'bearings-in'], ['part-sidecar-hub', 'powder-coated', 'bearings-in']],
    effort: [60, 80, 120], crew: ['mechanics'], equipment: ['equip-press', 'equip-heat-gun'], coverage: 'inserts and teaching',
    shots: [['insert', 'Bearing drops into a warm hub', 8, 'must']], layOut: ['Bearings, still wrapped', 'Heat-proof gloves', 'Bearing drifts, outer ring only'], cautions: ['Warm the hub, never past what the powder shop allows.'], manual: "maker's manual, section J1 (wheels)",
  },
  {
    id: 'task-frame-face', name: 'Unmask the frame, chase threads, clear the earths', category: 'repair', episode: 'ep-powder', place: 'place-main-bay',
    parts: [['part-frame', 'powder-coated', 'faced'], ['part-yokes', 'powder-coated', null]], effort: [80, 110, 160], crew: ['mechanics'], coverage: 'moved camera',
    shots: [['after', 'Gloss against the as-found photograph', 10, 'must', ['part-frame', 'faced']], ['piece to camera', 'Powder is not paint: what it hides and how it chips', 14]],
    layOut: ['Taps and thread files', 'Scraper for bearing seats', 'Felt pads', 'Anti-seize'], manual: "maker's manual, section F1 (frame)",
  },
  {
    id: 'task-arm-bush', name: 'Bush and ream the swinging arm', category: 'assembly', episode: 'ep-powder', place: 'place-bench',
    parts: [['part-swinging-arm', 'powder-coated', 'bushed']], effort: [50, 75, 120], crew: ['mechanics'], equipment: ['equip-press', 'equip-measuring'], coverage: 'inserts and teaching', shots: [['insert', 'Reamer turns once, spindle slides', 8]],
    layOut: ['Bushes and spindle', 'Adjustable reamer', 'Cutting oil', 'Eye protection'], manual: "maker's manual, section H2 (swinging arm)",
  },
  {
    id: 'task-tin-beat', name: 'Beat dents and weld splits in mudguards and toolbox', category: 'repair', episode: 'ep-tinware', place: 'place-bench',
    parts: [['part-front-mudguard', 'off', 'straight'], ['part-rear-mudguard', 'off', 'straight'], ['part-toolbox', 'off', 'straight'], ['part-sidecar-mudguard', 'off', 'straight']],
    effort: [150, 210, 330], crew: ['welding'], equipment: ['equip-welder'], coverage: 'locked-off', noisy: true,
    shots: [['during', 'Dolly and hammer, split stitched', 12, 'must']],
    layOut: ['Hammers and dollies', 'Ear protection', 'Welding mask and gloves', 'Extinguisher in frame', 'Fire blanket'], cautions: ['Thin steel carries heat to old underseal: scrape it off first, fire watch after.', 'Ears on before the first blow.'],
  },
  {
    id: 'task-tin-blast', name: 'Blast the tinware in the cabinet', category: 'clean', episode: 'ep-tinware', place: 'place-blast-corner',
    parts: [['part-front-mudguard', 'straight', 'blasted'], ['part-rear-mudguard', 'straight', 'blasted'], ['part-toolbox', 'straight', 'blasted'], ['part-sidecar-mudguard', 'straight', 'blasted']],
    effort: [70, 95, 140], oneGo: true, crew: ['anybody'], equipment: ['equip-blast-cabinet', 'equip-compressor'], coverage: 'locked-off', noisy: true, dusty: true,
    shots: [['during', 'Through the cabinet window: rust to grey', 8, 'must']],
    layOut: ['Fine garnet, no sand', 'Cabinet gloves checked for holes', 'P3 mask for emptying', 'Ear protection', 'Hygrometer'],
    cautions: ['No silica sand, ever; door shut, extractor on, window seal looked at.', 'Bare blasted steel rusts by itself: primer within four hours or blast again.'],
  },
  {
    id: 'task-tin-etch', name: 'Etch prime the blasted tinware', category: 'paint', episode: 'ep-tinware', place: 'place-paint-tent',
    parts: [['part-front-mudguard', 'blasted', 'etched'], ['part-rear-mudguard', 'blasted', 'etched'], ['part-toolbox', 'blasted', 'etched'], ['part-sidecar-mudguard', 'blasted', 'etched']],
    effort: [40, 55, 85], oneGo: true, crew: ['paint'], equipment: [fan, gun, air], coats: ['mat-etch-primer'], coverage: 'none', minimumTemperature: 12, layOut: sprayKit, cautions: sprayCautions,
  },
  {
    id: 'task-tin-high-build', name: 'High-build primer on the tinware', category: 'paint', episode: 'ep-tinware', place: 'place-paint-tent',
    parts: [['part-front-mudguard', 'etched', 'primed'], ['part-rear-mudguard', 'etched', 'primed'], ['part-toolbox', 'etched', 'primed'], ['part-sidecar-mudguard', 'etched', 'primed']],
    effort: [45, 60, 90], oneGo: true, crew: ['paint'], equipment: [fan, gun, air], coats: ['mat-high-build'], coverage: 'none', minimumTemperature: 12, layOut: [...sprayKit, 'Guide coat'], cautions: sprayCautions,
  },
  {
    id: 'task-tin-flat', name: 'Wet-flat the tinware, guide coat gone', category: 'clean', episode: 'ep-tinware', place: 'place-bench',
    parts: [['part-front-mudguard', 'primed', 'flatted'], ['part-rear-mudguard', 'primed', 'flatted'], ['part-toolbox', 'primed', 'flatted'], ['part-sidecar-mudguard', 'primed', 'flatted']],
    effort: [90, 130, 200], crew: ['anybody'], coverage: 'inserts and teaching', shots: [['insert', 'Guide coat shows the low spot', 10, 'must']],
    layOut: ['Wet paper, blocks', 'Bucket, drop of soap', 'Gloves', 'Floor cloth'], cautions: ['Wet only: no dry primer dust in the arch.'],
  },
  {
    id: 'task-tin-coat-1', name: 'First finish coat on the tinware', category: 'paint', episode: 'ep-tinware', place: 'place-paint-tent',
    parts: [['part-front-mudguard', 'flatted', 'first-coat'], ['part-rear-mudguard', 'flatted', 'first-coat'], ['part-toolbox', 'flatted', 'first-coat'], ['part-sidecar-mudguard', 'flatted', 'first-coat']],
    effort: [50, 65, 100], oneGo: true, crew: ['paint'], equipment: [fan, gun, air], coats: ['mat-spray-enamel'], coverage: 'moved camera', minimumTemperature: 12,
    shots: [['during', 'Gun passes the long mudguard in one breath', 8, 'must']], layOut: sprayKit, cautions: sprayCautions,
  },
  {
    id: 'task-tin-coat-2', name: 'Second finish coat on the tinware', category: 'paint', episode: null, place: 'place-paint-tent',
    parts: [['part-front-mudguard', 'first-coat', 'painted'], ['part-rear-mudguard', 'first-coat', 'painted'], ['part-toolbox', 'first-coat', 'painted'], ['part-sidecar-mudguard', 'first-coat', 'painted']],
    effort: [50, 65, 100], oneGo: true, crew: ['paint'], equipment: [fan, gun, air], coats: ['mat-spray-enamel'], coverage: 'none', minimumTemperature: 12, layOut: sprayKit, cautions: sprayCautions,
  },
  {
    id: 'task-tank-test', name: 'Flush and pressure-test the tank', category: 'clean', episode: null, place: 'place-yard',
    parts: [['part-tank', 'drained', 'pressure-tested']], effort: [50, 70, 110], crew: ['mechanics'], coverage: 'none', needsDaylight: true,
    layOut: ['Hot water and detergent', 'Bladder pump with gauge', 'Soapy water', 'Fuel-proof gloves', 'Eye protection', 'Foam extinguisher'],
    cautions: ['No heat, no grinding, no welding on a tank: a leak goes to a tank repairer.', 'A breath of pressure from the hand pump, never the compressor.'],
  },
];
