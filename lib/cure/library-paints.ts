/** Primers and paints, generic kinds. Times are stand-ins until a data sheet is at hand. */
import type { CoatMaterial, RecoatRow } from './coat-material';
import { DAY, FOUR_HOUR_POT, HOUR, memory, PRACTICE, read, SIX_HOUR_POT, SOLVENT_FILM } from './sources';

/** Polyurethane on polyurethane, hours. UFGS 09 97 1x p. 28. */
export const POLYURETHANE_ROWS: readonly RecoatRow[] = [
  { from: 16, to: 21, min: 8, max: 48 },
  { from: 22, to: 27, min: 6, max: 48 },
  { from: 28, to: 32, min: 4, max: 36 },
  { from: 33, to: 38, min: 3, max: 24 },
  { from: 39, to: 43, min: 2, max: 12 },
  { from: 44, to: 49, min: 1, max: 2 },
];

const WET_BLAST = 'On blasted steel prime within 4 h, or blast again (UFGS 09 97 1x, 3.7.2.6).';

export const PRIMERS: readonly CoatMaterial[] = [
  {
    ...SOLVENT_FILM, id: 'primer-single-pack', name: 'Single-pack metal primer', sort: 'primer',
    stages: { flashOff: 15, touchDry: HOUR, recoatFrom: 4 * HOUR, recoatUntil: 7 * DAY, handle: 16 * HOUR, fullCure: 7 * DAY },
  },
  {
    ...SOLVENT_FILM, id: 'primer-etch', name: 'Etch primer', sort: 'primer', belowMinimum: 'surface fault', minimumTemperature: 10, minimumUntilDry: 10,
    stages: { flashOff: 10, touchDry: 15, recoatFrom: 30, recoatUntil: DAY, handle: 2 * HOUR, fullCure: 2 * DAY },
    thinner: null, cautions: ['Thin coats only: acid that stays under a thick one lifts what comes on top.'],
    sources: { ...SOLVENT_FILM.sources, minimumTemperature: PRACTICE, belowMinimum: memory('acid left on a cold surface stays tacky') },
  },
  {
    ...SOLVENT_FILM, id: 'primer-epoxy', name: 'Two-pack epoxy primer', sort: 'primer', referenceTemperature: 24,
    law: { kind: 'arrhenius', activation: 6160 }, belowMinimum: 'surface fault', minimumTemperature: 10, minimumUntilDry: 10,
    stages: { flashOff: 20, touchDry: 2 * HOUR, recoatFrom: 5 * HOUR, recoatUntil: 8 * HOUR, handle: 12 * HOUR, fullCure: 7 * DAY },
    potLife: SIX_HOUR_POT, thinner: { low: 0, high: 10 },
    cautions: ['From 8 to 24 h wipe or scuff with P320 to P400; after 24 h scuffing is a must (TO 1-1-8, 5.6.2).'],
    sources: {
      ...SOLVENT_FILM.sources,
      stages: read('TO 1-1-8, 5.6.2, at 24 °C: coat from 5 to 8 h; touch dry, handle and full cure are common practice'),
      law: memory('Q of a rate that doubles from 20 to 30 °C'),
      minimumTemperature: PRACTICE,
      belowMinimum: memory('amine cured epoxies blush in the cold and damp: wash before the next coat'),
      potLife: read('TB 43-0144: 6 h at 21 °C, induction included; half an hour of induction is common practice'),
      lateWork: read('NAVFAC MO-124, TB 43-0144 and MIL-HDBK-1110 differ: abrade, or clean and tack coat'),
    },
  },
  {
    ...SOLVENT_FILM, id: 'primer-zinc', name: 'Zinc-rich primer', sort: 'primer', referenceTemperature: 24,
    stages: { flashOff: 10, touchDry: 30, recoatFrom: 4 * HOUR, recoatUntil: null, handle: 4 * HOUR, fullCure: 2 * DAY },
    thinner: null, cautions: [WET_BLAST, 'Brush white zinc salts off before the next coat.'], lateWork: 'none',
  },
];

export const PAINTS: readonly CoatMaterial[] = [
  {
    ...SOLVENT_FILM, id: 'paint-single-pack-fast', name: 'Single-pack lacquer, fast', sort: 'paint',
    stages: { flashOff: 10, touchDry: 15, recoatFrom: 30, recoatUntil: 45, handle: 6 * HOUR, fullCure: DAY },
    cautions: ['A second coat between 45 min and full cure may wrinkle the first: wait, then abrade.'],
    sources: { ...SOLVENT_FILM.sources, stages: read('TO 1-1-8, 6.12.19: tack-free 15 min, recoat 30 to 45 min at most, through 6 h, hard 24 h; the flash-off is common practice') },
  },
  {
    ...SOLVENT_FILM, id: 'paint-single-pack-enamel', name: 'Single-pack enamel', sort: 'paint',
    stages: { flashOff: 20, touchDry: 4 * HOUR, recoatFrom: 16 * HOUR, recoatUntil: 3 * DAY, handle: DAY, fullCure: 14 * DAY },
    cautions: ['Two weeks before tyres are fitted or chain oil reaches it: common practice, no source.'],
  },
  {
    ...SOLVENT_FILM, id: 'paint-waterborne', name: 'Single-pack waterborne paint', sort: 'paint', belowMinimum: 'never forms',
    minimumTemperature: 10, minimumUntilDry: 8, humidity: { low: null, high: 80 }, hasSolvent: false, thinner: { low: 0, high: 5 },
    stages: { flashOff: 15, touchDry: HOUR, recoatFrom: 3 * HOUR, recoatUntil: null, handle: 12 * HOUR, fullCure: 14 * DAY }, lateWork: 'none',
    sources: {
      ...SOLVENT_FILM.sources, minimumTemperature: PRACTICE, humidity: PRACTICE,
      belowMinimum: memory('below its film-forming temperature the particles do not join'),
    },
  },
  {
    ...SOLVENT_FILM, id: 'paint-polyurethane', name: 'Two-pack polyurethane topcoat', sort: 'paint', law: { kind: 'arrhenius', activation: 5000 },
    belowMinimum: 'pauses', minimumTemperature: 10, minimumUntilDry: 5, recoatRows: POLYURETHANE_ROWS, potLife: FOUR_HOUR_POT,
    stages: { flashOff: 15, touchDry: 3 * HOUR, recoatFrom: 8 * HOUR, recoatUntil: 2 * DAY, handle: DAY, fullCure: 7 * DAY },
    thinner: { low: 5, high: 15 }, hasIsocyanate: true,
    sources: {
      ...SOLVENT_FILM.sources,
      law: memory('apparent activation of two-pack coatings'),
      minimumTemperature: PRACTICE,
      belowMinimum: memory('the reaction slows and goes on in the warmth'),
      recoatRows: read('UFGS 09 97 1x, p. 28, polyurethane on polyurethane'),
      potLife: read('UFGS 09 97 1x, 3.7.1.3: 4 h at 21 °C, halves for every 10 K'),
    },
  },
];
