/** Episode 3 and the brakes after it: a seized caliper, worked through with its cautions. */
import type { TaskDraft } from './draft';

export const brakeTasks: readonly TaskDraft[] = [
  {
    id: 'task-caliper-talk', name: 'Piece to camera: what the maker allows on a caliper', category: 'filming', episode: 'ep-stuck-pistons', place: 'place-filming-corner',
    parts: [['part-caliper', 'off', null]], effort: [20, 30, 50], oneGo: true, crew: ['presenting', 'camera'], coverage: 'piece to camera',
    shots: [['piece to camera', 'The order we try things in, and where we stop', 20, 'must']],
    layOut: ["Maker's manual open at the page", 'Caliper, cleaned outside only', 'Seal kit'],
    cautions: ["The maker's instructions come first; the bridge bolts stay in, we change pistons and seals only.", 'This shows what we do, it does not teach brake repair: a qualified person checks it before the road.'],
    manual: "maker's manual, section J5 (disc brake conversion)",
  },
  {
    id: 'task-caliper-pistons', name: 'Ease the caliper pistons out with low air', category: 'strip', episode: 'ep-stuck-pistons', place: 'place-bench',
    parts: [['part-caliper', 'off', 'pistons-out']], effort: [35, 50, 100], oneGo: true, irreversible: true, crew: ['mechanics', 'camera'], equipment: ['equip-compressor'], coverage: 'inserts and teaching', noisy: true,
    shots: [
      ['before', 'Wide: caliper in the vice, hose and gauge in frame', 4, 'must'], ['before', 'Medium: both pistons and how far they stand, with rule', 4, 'must'], ['before', 'Close: corrosion at the dust seal, with scale', 5, 'must'],
      ['insert', 'Regulator gauge at its lowest setting', 5, 'must'], ['insert', 'Wood pad in the bridge, rag over it', 5, 'must'], ['during', 'Hands clear, one short breath of air, piston meets the wood', 12, 'must'], ['piece to camera', 'Caution spoken before the valve is touched', 6, 'must'],
    ],
    layOut: ['Hydraulic pump and hose: tried first', 'Regulator with gauge, set to the lowest that moves it', 'Hardwood pad to fill the bridge', 'Thick rags', 'Blow gun with a short tip', 'Face shield over eye protection', 'Ear protection', 'Gloves', 'Tray for brake fluid'],
    cautions: [
      "The maker's instructions come first: where they say hydraulic only, it is hydraulic only.", 'Push the pistons out with the old hydraulics first; air is the second choice.',
      'Regulator backed right off, then up slowly; stop at low pressure if nothing moves and send the caliper away.', 'Wood pad in, rag over it, fingers never between piston and bridge: a piston comes out like a shot.',
      'Nobody in line with the open bore, camera on a stand.',
    ],
    manual: "maker's manual, section J5 (disc brake conversion)",
  },
  {
    id: 'task-caliper-clean', name: 'Clean bores and measure pistons', category: 'clean', episode: 'ep-stuck-pistons', place: 'place-bench',
    parts: [['part-caliper', 'pistons-out', 'cleaned'], ['part-disc', 'off', 'measured']], effort: [50, 70, 110], crew: ['mechanics'], equipment: ['equip-measuring', 'equip-washer'], coverage: 'inserts and teaching',
    shots: [['insert', 'Micrometer on piston and disc against the wear limit', 12, 'must']],
    layOut: ['Brake cleaner, not chlorinated', 'Wooden picks for the seal grooves', 'Lint-free cloths', 'Nitrile gloves', 'Eye protection'],
    cautions: ['No steel picks in a seal groove.', 'Read the cleaner label aloud; none of it before heat or welding.'], manual: "maker's manual, section J5 (wear limits)",
  },
  {
    id: 'task-caliper-reseal', name: 'New seals and pistons into the caliper', category: 'assembly', episode: 'ep-stuck-pistons', place: 'place-bench',
    parts: [['part-caliper', 'cleaned', 'resealed']], effort: [40, 55, 90], oneGo: true, crew: ['mechanics'], coverage: 'inserts and teaching',
    shots: [['insert', 'Square seal seated, piston pushed home by thumb', 14, 'must'], ['after', 'Finished caliper, label with date', 4]],
    layOut: ['Seal kit, date checked', 'Fresh fluid of the grade on the cap', 'Rubber grease for brakes', 'Clean gloves'], cautions: ['Nothing from a mineral-oil tin touches a brake seal.'],
    manual: "maker's manual, section J5 (disc brake conversion)",
  },
  {
    id: 'task-master', name: 'Reseal the master cylinder', category: 'repair', episode: null, place: 'place-bench',
    parts: [['part-master-cylinder', 'off', 'resealed']], effort: [45, 60, 100], crew: ['mechanics'], equipment: ['equip-measuring'], coverage: 'none',
    layOut: ['Circlip pliers', 'Seal kit', 'Eye protection: spring behind the circlip'], manual: "maker's manual, section J6 (master cylinder)",
  },
  {
    id: 'task-drums', name: 'Fit the relined shoes and centre both drums', category: 'assembly', episode: null, place: 'place-main-bay',
    parts: [['part-shoes', 'relined', 'fitted'], ['part-frame', 'rolling', null], ['part-chassis', 'on-wheels', null]], effort: [50, 75, 120], crew: ['mechanics'], coverage: 'none',
    layOut: ['New springs and split pins', 'High-melt grease, thin', 'Clean gloves'], cautions: ['No grease on a lining; a greased shoe is a new shoe.'], manual: "maker's manual, section J3 (brakes)",
  },
  {
    id: 'task-brake-fit', name: 'Hang caliper, disc, hoses and master cylinder', category: 'assembly', episode: null, place: 'place-main-bay',
    parts: [['part-caliper', 'resealed', 'fitted'], ['part-disc', 'measured', 'fitted'], ['part-master-cylinder', 'resealed', 'fitted'], ['part-hoses', 'new', 'fitted'], ['part-frame', 'rolling', null]],
    effort: [60, 85, 130], crew: ['mechanics'], equipment: ['equip-torque'], coats: ['mat-thread-locker'], coverage: 'none',
    layOut: ['New copper washers', 'Torque card from the manual', 'Fender cover over paint'], manual: "maker's manual, section J5 (torques)",
  },
  {
    id: 'task-brake-bleed', name: 'Bleed the front brake and hold it under pressure', category: 'setting up', episode: 'ep-tyres', place: 'place-main-bay',
    parts: [['part-caliper', 'fitted', 'bled'], ['part-hoses', 'fitted', 'bled']], effort: [50, 70, 120], oneGo: true, crew: ['mechanics', 'anybody'], coverage: 'inserts and teaching',
    shots: [['insert', 'Lever tied back overnight, paper under every joint', 10, 'must']],
    layOut: ['Sealed bottle of fluid', 'Clear hose and jar', 'Water for spills', 'Lever strap', 'White paper'],
    cautions: ['Fluid from an opened bottle is old fluid.', 'A brake is not proven by a dry joint: leak test shown, a competent person signs before the road.'], manual: "maker's manual, section J7 (bleeding)",
  },
  {
    id: 'task-leak-check', name: 'Read the leak papers and torque the brake again', category: 'setting up', episode: null, place: 'place-main-bay',
    parts: [['part-caliper', 'bled', 'proven']], effort: [15, 25, 45], oneGo: true, crew: ['mechanics'], equipment: ['equip-torque'], coverage: 'none',
    layOut: ['Torch', 'Torque card', 'Log book'], manual: "maker's manual, section J7 (bleeding)",
  },
];
