/** How the sources of library values are written, and values that many materials share. */
import type { CoatMaterial, PotLife, ValueSource } from './coat-material';
import type { RateLaw } from './rate';

export const read = (text: string): ValueSource => ({ kind: 'read', text });
export const memory = (text: string): ValueSource => ({ kind: 'memory', text });
export const PRACTICE: ValueSource = { kind: 'none', text: 'common practice, no source' };

export const HOUR = 60;
export const DAY = 1440;

const BY_TEN: RateLaw = { kind: 'doubling', per: 10 };

/** Film of solvent-borne paint in a cold workshop. Limits from the handbooks, times from practice. */
export const SOLVENT_FILM = {
  referenceTemperature: 20, law: BY_TEN, minimumTemperature: 7, minimumUntilDry: 4.4, belowMinimum: 'pauses', maximumTemperature: 32,
  humidity: { low: null, high: 85 }, dewMargin: 3, recoatRows: [], potLife: null, thinner: { low: 10, high: 15 }, lateWork: 'abrade',
  bake: null, depthPerRootDay: null, isConfinedOnly: false, hasSolvent: true, hasIsocyanate: false, cautions: [],
  sources: {
    stages: PRACTICE,
    law: PRACTICE,
    minimumTemperature: read('MIL-HDBK-1110 / UFC 3-190-06, 7.4.1: apply at 7 to 32 °C, not if 4.4 °C is expected before it is dry'),
    maximumTemperature: read('MIL-HDBK-1110 / UFC 3-190-06, 7.4.1'),
    belowMinimum: memory('solvent-borne films dry more slowly in the cold'),
    humidity: read('IMO guideline, 3.3.4: not above 85 %'),
    dewMargin: read('MIL-HDBK-1110, 9.6.6: 3 K above the dew point'),
    thinner: PRACTICE,
    lateWork: PRACTICE,
  },
} as const satisfies Omit<CoatMaterial, 'id' | 'name' | 'sort' | 'stages'>;

/** UFGS 09 97 1x, 3.7.1.3: 4 h at 21 °C, halves for every 10 K. */
export const FOUR_HOUR_POT: PotLife = { minutes: 240, at: 21, halvesPer: 10, induction: 0, isInductionIncluded: false };

/** TB 43-0144: 6 h at 21 °C, the induction in it. Half an hour of induction is practice. */
export const SIX_HOUR_POT: PotLife = { minutes: 360, at: 21, halvesPer: 10, induction: 30, isInductionIncluded: true };
