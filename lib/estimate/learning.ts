/** What finished work says about estimates: one factor a category, drawn towards the others while there is little of it. */

/** One finished piece of work, both lengths in the same unit. */
export interface Observation<C extends string = string> {
  readonly category: C;
  readonly estimate: number;
  readonly actual: number;
  /** Broken off or disturbed: shown, not learned from. */
  readonly wasInterrupted: boolean;
}

export interface LearnedFactor {
  /** Typical actual length, as a multiple of the estimate. */
  readonly factor: number;
  /** Of ln(actual / estimate): the category's mean, and how uncertain that mean is. */
  readonly mean: number;
  readonly deviation: number;
  /** Observations behind it. */
  readonly n: number;
  /** Eight of ten such factors lie in it. */
  readonly interval: { readonly low: number; readonly high: number };
  /** Plain mean of the category's own observations as a factor; null without any. */
  readonly own: number | null;
  /** Share taken from the other categories, 0 to 1. */
  readonly shrinkage: number;
}

/** The values behind the factors, on the scale of ln(actual / estimate). */
export interface LearningBasis {
  readonly n: number;
  readonly categories: number;
  /** Sum of squares within categories. */
  readonly within: number;
  /** Variance of one observation. */
  readonly variance: number;
  /** Weighted sum of squares between categories. */
  readonly between: number;
  /** Variance of the categories' true means. */
  readonly spread: number;
  /** Mean of the categories. */
  readonly mean: number;
}

export interface Learned<C extends string = string> {
  readonly byCategory: ReadonlyMap<C, LearnedFactor>;
  /** For a category with no observation yet. */
  readonly unseen: LearnedFactor;
  readonly basis: LearningBasis;
  /** Observations left out: interrupted, or lengths that are not above zero. */
  readonly leftOut: number;
  /** Fewer than {@link FEWEST_OBSERVATIONS}: shown, not worth using in a plan. */
  readonly isEnough: boolean;
}

/** Common practice, no source. */
export const FEWEST_OBSERVATIONS = 5;
/** Before any observation: a standard deviation of 0.30 (about a third more or less), worth four observations. Common practice, no source. */
const PRIOR_WEIGHT = 4;
const PRIOR_DEVIATION = 0.3;
/** The categories are never taken as exactly alike. */
const LEAST_SPREAD = 0.01;
/** Eight of ten values of a normal distribution lie this many standard deviations about its mean. */
const MIDDLE_80 = 1.281_551_565_5;

interface Group<C extends string> {
  readonly category: C;
  readonly n: number;
  readonly mean: number;
  readonly squares: number;
}

function sum<T>(items: readonly T[], value: (item: T) => number): number {
  return items.reduce((total, item) => total + value(item), 0);
}

/** @example isLearnable({ category: 'paint', estimate: 40, actual: 100, wasInterrupted: false }) // true */
export function isLearnable({ estimate, actual, wasInterrupted }: Observation): boolean {
  return !wasInterrupted && estimate > 0 && actual > 0 && Number.isFinite(estimate) && Number.isFinite(actual);
}

function groupByCategory<C extends string>(observations: readonly Observation<C>[]): readonly Group<C>[] {
  const logs = new Map<C, number[]>();
  for (const { category, actual, estimate } of observations) {
    const list = logs.get(category) ?? [];
    list.push(Math.log(actual / estimate));
    logs.set(category, list);
  }
  return [...logs].map(([category, values]) => {
    const mean = sum(values, (value) => value) / values.length;
    return { category, n: values.length, mean, squares: sum(values, (value) => (value - mean) ** 2) };
  });
}

function findBasis(groups: readonly Group<string>[]): LearningBasis {
  const n = sum(groups, (group) => group.n);
  const within = sum(groups, (group) => group.squares);
  const variance = (PRIOR_WEIGHT * PRIOR_DEVIATION ** 2 + within) / (PRIOR_WEIGHT + sum(groups, (group) => group.n - 1));
  if (n === 0) return { n, categories: 0, within, variance, between: 0, spread: LEAST_SPREAD, mean: 0 };
  const grand = sum(groups, (group) => group.n * group.mean) / n;
  const between = sum(groups, (group) => group.n * (group.mean - grand) ** 2) / variance;
  const room = n - sum(groups, (group) => group.n ** 2) / n;
  const spread = room > 0 ? Math.max(LEAST_SPREAD, (variance * (between - (groups.length - 1))) / room) : LEAST_SPREAD;
  const weight = (group: Group<string>) => 1 / (spread + variance / group.n);
  const mean = sum(groups, (group) => weight(group) * group.mean) / sum(groups, weight);
  return { n, categories: groups.length, within, variance, between, spread, mean };
}

function factorAt(mean: number, variance: number): Pick<LearnedFactor, 'factor' | 'mean' | 'deviation' | 'interval'> {
  const deviation = Math.sqrt(variance);
  const reach = MIDDLE_80 * deviation;
  return { factor: Math.exp(mean), mean, deviation, interval: { low: Math.exp(mean - reach), high: Math.exp(mean + reach) } };
}

/**
 * Factors by category from y = ln(actual / estimate): normal within a category, the categories' means normal about a
 * common one, both variances estimated from the data (moments), the variance of one observation held by a prior. A
 * category's factor is exp(B·common mean + (1 - B)·own mean) with B = (s²/n)/(τ² + s²/n): the fewer observations, the
 * more it borrows. The interval counts the uncertainty of the common mean too.
 * Method: normal-normal shrinkage with the moment estimate of DerSimonian and Laird (Controlled Clinical Trials 7, 1986), from memory.
 * @throws never; observations that say nothing are left out and counted.
 */
export function learnFactors<C extends string>(observations: readonly Observation<C>[]): Learned<C> {
  const used = observations.filter(isLearnable);
  const groups = groupByCategory(used);
  const basis = findBasis(groups);
  const totalWeight = sum(groups, (group) => 1 / (basis.spread + basis.variance / group.n));
  const meanVariance = totalWeight > 0 ? 1 / totalWeight : basis.variance;
  const byCategory = new Map<C, LearnedFactor>();
  for (const { category, n, mean } of groups) {
    const noise = basis.variance / n;
    const shrinkage = noise / (basis.spread + noise);
    const variance = (1 - shrinkage) * noise + shrinkage ** 2 * meanVariance;
    byCategory.set(category, { ...factorAt(shrinkage * basis.mean + (1 - shrinkage) * mean, variance), n, own: Math.exp(mean), shrinkage });
  }
  const unseen: LearnedFactor = { ...factorAt(basis.mean, basis.spread + meanVariance), n: 0, own: null, shrinkage: 1 };
  return { byCategory, unseen, basis, leftOut: observations.length - used.length, isEnough: used.length >= FEWEST_OBSERVATIONS };
}

/** The factor of a category, or that of one not seen yet. */
export function factorOf<C extends string>(learned: Learned<C>, category: C): LearnedFactor {
  return learned.byCategory.get(category) ?? learned.unseen;
}

/** Standard deviation over mean of a length whose logarithm is normal with that deviation. @example relativeSpread(0.3) // 0.307 */
export function relativeSpread(logDeviation: number): number {
  return Math.sqrt(Math.expm1(logDeviation ** 2));
}
