/** Generic materials to copy and edit: kinds, not products. Every value names its source or says that it has none. */
import type { CoatMaterial } from './coat-material';
import { PAINTS, PRIMERS } from './library-paints';
import { DAY, HOUR, memory, PRACTICE, read, SOLVENT_FILM } from './sources';

const DRY_WORK = {
  ...SOLVENT_FILM, recoatRows: [], thinner: null, lateWork: 'abrade',
  sources: { ...SOLVENT_FILM.sources, minimumTemperature: PRACTICE, maximumTemperature: PRACTICE, humidity: PRACTICE, dewMargin: PRACTICE },
} as const satisfies Partial<CoatMaterial>;

const FILLERS_AND_BONDS: readonly CoatMaterial[] = [
  {
    ...DRY_WORK, id: 'filler-polyester', name: 'Two-pack polyester filler', sort: 'filler', minimumTemperature: 10, minimumUntilDry: 10,
    stages: { flashOff: 0, touchDry: 15, recoatFrom: 30, recoatUntil: null, handle: 30, fullCure: DAY },
    potLife: { minutes: 5, at: 20, halvesPer: 10, induction: 0, isInductionIncluded: false }, lateWork: 'none',
    cautions: ['Sand dry; fill bare metal or epoxy primer, never etch primer.'],
    sources: { ...DRY_WORK.sources, potLife: PRACTICE, belowMinimum: PRACTICE },
  },
  {
    ...DRY_WORK, id: 'sealer-seam', name: 'Seam sealer, moisture curing', sort: 'sealer', referenceTemperature: 23,
    law: { kind: 'moisture', humidity: 50 }, minimumTemperature: 5, minimumUntilDry: 5, maximumTemperature: 40, humidity: { low: 30, high: null },
    stages: { flashOff: 0, touchDry: 30, recoatFrom: 30, recoatUntil: 3 * DAY, handle: 12 * HOUR, fullCure: 3 * DAY }, depthPerRootDay: 3,
    sources: {
      ...DRY_WORK.sources, depthPerRootDay: PRACTICE, lateWork: PRACTICE,
      law: read('Comyn 1998 (abstract): depth with the square root of time, needs humidity; the law itself from memory'),
    },
  },
  {
    ...DRY_WORK, id: 'adhesive-epoxy', name: 'Epoxy adhesive, two-pack', sort: 'adhesive', minimumTemperature: 10, minimumUntilDry: 8, hasSolvent: false,
    law: { kind: 'arrhenius', activation: 6160 }, lateWork: 'abrade', maximumTemperature: 40,
    stages: { flashOff: 0, touchDry: 4 * HOUR, recoatFrom: 4 * HOUR, recoatUntil: DAY, handle: 12 * HOUR, fullCure: 3 * DAY },
    potLife: { minutes: 60, at: 20, halvesPer: 10, induction: 0, isInductionIncluded: false },
    cautions: ['Clamp until fit to handle. A cold bond only pauses: warm it before you load it.'],
    sources: { ...DRY_WORK.sources, potLife: PRACTICE, law: memory('Q of a rate that doubles from 20 to 30 °C'), belowMinimum: memory('the reaction slows and goes on in the warmth') },
  },
  {
    ...DRY_WORK, id: 'thread-locker', name: 'Anaerobic thread locker', sort: 'thread locker', minimumTemperature: 5, minimumUntilDry: 5, maximumTemperature: 40,
    referenceTemperature: 22, hasSolvent: false, isConfinedOnly: true, lateWork: 'none', humidity: { low: null, high: null }, dewMargin: 0,
    stages: { flashOff: 0, touchDry: 20, recoatFrom: 20, recoatUntil: null, handle: 20, fullCure: DAY },
    cautions: ['Cures only between active metal that shuts out air (ASTM D5363, scope): plated or stainless threads need an activator.'],
  },
];

const FROM_OUTSIDE: readonly CoatMaterial[] = [
  {
    ...DRY_WORK, id: 'powder', name: 'Powder coat, baked', sort: 'powder', law: { kind: 'steady' }, hasSolvent: false, lateWork: 'abrade',
    stages: { flashOff: 0, touchDry: HOUR, recoatFrom: HOUR, recoatUntil: null, handle: HOUR, fullCure: HOUR },
    bake: { metalTemperature: 180, hold: 10 }, humidity: { low: null, high: null }, dewMargin: 0,
    cautions: [
      'The bake counts at metal temperature, after its bring-up.',
      'Galvanised parts are baked first at cure + 30 K until they are at oven temperature or for an hour, or gas blisters the coat (galvanizers\' association).',
    ],
    sources: { ...DRY_WORK.sources, bake: PRACTICE },
  },
  {
    ...DRY_WORK, id: 'galvanizing-wash', name: 'Mordant wash for new galvanizing', sort: 'galvanizing wash', hasSolvent: true, belowMinimum: 'surface fault', lateWork: 'clean and tack coat',
    minimumTemperature: 8, minimumUntilDry: 8,
    stages: { flashOff: 5, touchDry: 30, recoatFrom: 2 * HOUR, recoatUntil: 30 * DAY, handle: 2 * HOUR, fullCure: DAY },
    cautions: ['The zinc must turn dark all over: where it stays bright, wash again. Acid: gloves and eyes.'],
    sources: { ...DRY_WORK.sources, belowMinimum: PRACTICE },
  },
  {
    ...DRY_WORK, id: 'release-film', name: 'Release film for moulds', sort: 'release', hasSolvent: true, belowMinimum: 'never forms', lateWork: 'strip',
    minimumTemperature: 10, minimumUntilDry: 10, maximumTemperature: 40, humidity: { low: null, high: 75 }, dewMargin: 3,
    stages: { flashOff: 5, touchDry: 30, recoatFrom: 30, recoatUntil: DAY, handle: HOUR, fullCure: HOUR },
    cautions: ['Use the mould on the same day; a film that wrinkles or beads is washed off and laid again.'],
    sources: { ...DRY_WORK.sources, belowMinimum: PRACTICE },
  },
];

/** All generic materials, primers first. Copy one, then change it. */
export const MATERIAL_LIBRARY: readonly CoatMaterial[] = [...PRIMERS, ...PAINTS, ...FILLERS_AND_BONDS, ...FROM_OUTSIDE];

/** @example findMaterial('primer-epoxy')?.name // 'Two-pack epoxy primer' */
export function findMaterial(id: string): CoatMaterial | null {
  return MATERIAL_LIBRARY.find((material) => material.id === id) ?? null;
}
