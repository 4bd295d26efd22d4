/** How long a task takes when it is filmed: hands-on time, and what the camera adds to it. */
import { fail, issue, ok, type Issue, type Result } from '@/lib/result';
import { threePointDeviation, threePointMean, type Triple } from './three-point';

/** How a task is filmed. */
export type FilmingManner = 'none' | 'locked-off' | 'moved camera' | 'inserts and teaching' | 'piece to camera' | 'time-lapse' | 'montage';

/** Minutes of each step in front of and behind the camera, and how often a shot is not good the first time. */
export interface FilmingTimes {
  /** A new camera position, minutes. */
  readonly position: number;
  /** Framing and rolling one shot, minutes. */
  readonly shot: number;
  /** One further take, minutes. */
  readonly take: number;
  /** Putting the scene back before a further take, minutes. */
  readonly reset: number;
  /** Chance that a take is not good, 0 to 0.9. */
  readonly retakeChance: number;
  /** Getting everything ready for a step that happens once, minutes. */
  readonly oneWay: number;
  /** Putting camera and lights away, minutes. */
  readonly packUp: number;
}

/** What is filmed in a task. */
export interface FilmingCounts {
  readonly positions: number;
  /** Shots that can be taken again. */
  readonly shots: number;
  /** Shots of a step that happens once: never taken again. */
  readonly oneWayShots: number;
  /** Set-ups for a step that happens once. */
  readonly oneWaySetUps: number;
  readonly packUps: number;
}

/** A manner's usual counts, so much at least and so much more for each hour of hands-on work. */
interface FilmingHabit {
  readonly positions: number;
  readonly positionsPerHour: number;
  readonly shots: number;
  readonly shotsPerHour: number;
  readonly packUps: number;
}

export type FilmingHabits = Readonly<Record<FilmingManner, FilmingHabit>>;

/** What a series assumes about filming; each value can be changed. */
export interface FilmingAssumptions {
  readonly times: FilmingTimes;
  readonly habits: FilmingHabits;
}

/**
 * Where a series starts. Common practice, no source. With them two hours of work take 1.2 to 1.5 times as long with a
 * locked-off camera, 1.8 to 2.5 times with a camera that is moved, 2.5 to 4 times with inserts and teaching.
 */
export const COMMON_PRACTICE: FilmingAssumptions = {
  times: { position: 8, shot: 2, take: 3, reset: 4, retakeChance: 0.25, oneWay: 25, packUp: 10 },
  habits: {
    'none': { positions: 0, positionsPerHour: 0, shots: 0, shotsPerHour: 0, packUps: 0 },
    'locked-off': { positions: 1, positionsPerHour: 0, shots: 1, shotsPerHour: 1.5, packUps: 1 },
    'moved camera': { positions: 1, positionsPerHour: 3, shots: 2, shotsPerHour: 5, packUps: 1 },
    'inserts and teaching': { positions: 1, positionsPerHour: 4, shots: 2, shotsPerHour: 12, packUps: 1 },
    'piece to camera': { positions: 1, positionsPerHour: 0, shots: 1, shotsPerHour: 6, packUps: 1 },
    'time-lapse': { positions: 1, positionsPerHour: 0, shots: 1, shotsPerHour: 0, packUps: 1 },
    'montage': { positions: 1, positionsPerHour: 2, shots: 2, shotsPerHour: 3, packUps: 1 },
  },
};

/** One term of a session time, minutes. */
export interface TimeTerm {
  readonly what: 'hands-on' | 'positions' | 'shots' | 'further takes' | 'one-way set-ups' | 'pack-up';
  readonly minutes: number;
}

/** Mean, spread and the length that 8 of 10 such tasks keep to, minutes. */
export interface SessionTime {
  readonly mean: number;
  readonly deviation: number;
  readonly p80: number;
  /** Terms of the mean, the hands-on time first. */
  readonly terms: readonly TimeTerm[];
}

/** Eight of ten values of a normal distribution lie below its mean and this many standard deviations. */
const P80_DEVIATIONS = 0.841_621_233_6;

/** The P80 of a sum of many lengths, taken as normal. @example p80Of(204, 24.4) // 224.5 */
export function p80Of(mean: number, deviation: number): number {
  return mean + P80_DEVIATIONS * deviation;
}

/** Further takes of one shot until one is good: mean p/(1-p), variance p/(1-p)², the geometric distribution. */
export function furtherTakes(chance: number): { readonly mean: number; readonly variance: number } {
  return { mean: chance / (1 - chance), variance: chance / (1 - chance) ** 2 };
}

const NAMES: Readonly<Record<keyof FilmingTimes, string>> = {
  position: 'a camera position', shot: 'a shot', take: 'a further take', reset: 'a reset', retakeChance: 'the chance of a further take',
  oneWay: 'a one-way set-up', packUp: 'packing up',
};

/** A chance above this would mean ten takes of each shot: a slip. */
const LARGEST_CHANCE = 0.9;
const LONGEST = 480;

/** Refuses negative or absurd times: `filming-time`, `retake-chance`. All faults are told. */
export function checkFilmingTimes(times: FilmingTimes): Result<FilmingTimes> {
  const faults: Issue[] = [];
  for (const key of ['position', 'shot', 'take', 'reset', 'oneWay', 'packUp'] as const) {
    const value = times[key];
    if (value >= 0 && value <= LONGEST) continue;
    faults.push(issue('filming-time', `The time for ${NAMES[key]} is ${value} min; it must be from 0 to ${LONGEST} min.`, 'Type the minutes it takes you.', { path: [key] }));
  }
  const { retakeChance } = times;
  if (!(retakeChance >= 0 && retakeChance <= LARGEST_CHANCE)) {
    faults.push(issue('retake-chance', `The chance of a further take is ${retakeChance}; it must be from 0 to ${LARGEST_CHANCE}.`,
      'Type 0.25 if one shot in four is taken again.', { path: ['retakeChance'] }));
  }
  return faults.length > 0 ? fail(faults) : ok(times);
}

/**
 * What is usually filmed in a task of that hands-on length, in minutes. A step that happens once is set up once and
 * none of its shots is taken again.
 * @example usualCounts(COMMON_PRACTICE.habits['moved camera'], 120, false) // 7 positions, 12 shots
 */
export function usualCounts(habit: FilmingHabit, handsOn: number, happensOnce: boolean): FilmingCounts {
  const hours = handsOn / 60;
  const shots = Math.round(habit.shots + habit.shotsPerHour * hours);
  const isFilmed = shots > 0;
  return {
    positions: Math.round(habit.positions + habit.positionsPerHour * hours),
    shots: happensOnce ? 0 : shots,
    oneWayShots: happensOnce ? shots : 0,
    oneWaySetUps: happensOnce && isFilmed ? 1 : 0,
    packUps: habit.packUps,
  };
}

/**
 * Session time T = H + P·position + S·shot + N·(reset + take) + K·oneWay + packUp, where N is the number of further
 * takes of the shots that can be taken again. Hands-on time and further takes vary, the rest is taken as certain; the
 * P80 is that of a normal distribution. Lengths in minutes.
 * @throws RangeError when the times are not fit ({@link checkFilmingTimes}).
 */
export function sessionTime(handsOn: Triple, counts: FilmingCounts, times: FilmingTimes): SessionTime {
  if (!checkFilmingTimes(times).ok) throw new RangeError('Filming times must be checked before they are used');
  const takes = furtherTakes(times.retakeChance);
  const again = times.reset + times.take;
  const terms: readonly TimeTerm[] = [
    { what: 'hands-on', minutes: threePointMean(handsOn) },
    { what: 'positions', minutes: counts.positions * times.position },
    { what: 'shots', minutes: (counts.shots + counts.oneWayShots) * times.shot },
    { what: 'further takes', minutes: counts.shots * takes.mean * again },
    { what: 'one-way set-ups', minutes: counts.oneWaySetUps * times.oneWay },
    { what: 'pack-up', minutes: counts.packUps * times.packUp },
  ];
  const mean = terms.reduce((sum, term) => sum + term.minutes, 0);
  const deviation = Math.sqrt(threePointDeviation(handsOn) ** 2 + counts.shots * takes.variance * again ** 2);
  return { mean, deviation, p80: p80Of(mean, deviation), terms };
}
