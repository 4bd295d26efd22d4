/** What a forecast assumes where nothing has been observed. Wide on purpose, and shown beside every forecast. */
import { fail, issue, ok, type Result } from '@/lib/result';

export interface Assumptions {
  /** Standard deviation of ln(actual / estimate) shared by all work of a category. */
  readonly factorDeviation: number;
  /** 0 to 1: one take has to be made again; minutes of a retake with its reset. */
  readonly retakeChance: number;
  readonly retakeMinutes: number;
  /** 0 to 1: the only take of an irreversible step is lost; minutes of the pickup that stands in for it. */
  readonly lostChance: number;
  readonly lostMinutes: number;
  /** 0 to 1: a coat fails and is abraded and laid again. */
  readonly spoilChance: number;
  /** 0 to 1: a cold spell begins in a week; it lasts another week. Kelvins below the planned temperature. */
  readonly coldBegins: number;
  readonly coldLasts: number;
  readonly coldDrop: number;
  /** 0 to 1: a person is away for a whole week. */
  readonly absenceChance: number;
}

/**
 * Defaults. 0.30 is the prior of the estimates (a three-point estimate is off by a third as often as not); the retake share and its
 * minutes are common practice, no source; the rest is our choice.
 */
export const DEFAULT_ASSUMPTIONS: Assumptions = {
  factorDeviation: 0.3, retakeChance: 0.25, retakeMinutes: 7, lostChance: 0.02, lostMinutes: 30, spoilChance: 0.05,
  coldBegins: 0.1, coldLasts: 0.5, coldDrop: 7, absenceChance: 0.04,
};

const CHANCES = ['retakeChance', 'lostChance', 'spoilChance', 'coldBegins', 'coldLasts', 'absenceChance'] as const;
const LENGTHS = ['factorDeviation', 'retakeMinutes', 'lostMinutes', 'coldDrop'] as const;

/** Fails with `chance-out-of-range` or `assumption-below-zero`, one issue for each value that is wrong. */
export function checkAssumptions(assumptions: Assumptions): Result<Assumptions> {
  const chances = CHANCES.filter((name) => !(assumptions[name] >= 0 && assumptions[name] <= 1))
    .map((name) => issue('chance-out-of-range', `A chance is between 0 and 1, and ${name} is ${assumptions[name]}.`, 'Give 0.05 for one in twenty.', { path: [name] }));
  const lengths = LENGTHS.filter((name) => !(assumptions[name] >= 0 && Number.isFinite(assumptions[name])))
    .map((name) => issue('assumption-below-zero', `${name} is ${assumptions[name]}, and it cannot be below 0.`, 'Give 0 or more.', { path: [name] }));
  return chances.length + lengths.length > 0 ? fail([...chances, ...lengths]) : ok(assumptions);
}

const percent = (share: number): string => `${Math.round(share * 1000) / 10} %`;

/** The assumptions as sentences. */
export function tellAssumptions(assumptions: Assumptions): readonly string[] {
  return [
    `Work takes what its three-point estimate says, times a factor that work of one kind shares, with a spread of ${percent(assumptions.factorDeviation)}.`,
    `One take in ${assumptions.retakeChance > 0 ? Math.round(1 / assumptions.retakeChance) : 'none'} is made again (${assumptions.retakeMinutes} min each); a one-way shot is lost with ${percent(assumptions.lostChance)} (${assumptions.lostMinutes} min of pickups).`,
    `A coat fails with ${percent(assumptions.spoilChance)} and is laid again.`,
    `A cold spell of ${assumptions.coldDrop} K begins in ${percent(assumptions.coldBegins)} of the weeks and lasts another week with ${percent(assumptions.coldLasts)}; what dries in it slows down by the law of its material.`,
    `A person misses a whole week with ${percent(assumptions.absenceChance)}.`,
    'Outside trades take what they quote, spread by how their past jobs went.',
  ];
}
