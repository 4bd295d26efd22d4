/**
 * How late a trade really is, from its past jobs: y = ln(actual / quoted), shrunk towards the mean of its craft and of all
 * (normal-normal shrinkage), since one bad month is no habit.
 */

/** Prior of the spread of a single job: as if from four jobs with a standard deviation of 0.30. */
const PRIOR_COUNT = 4;
const PRIOR_DEVIATION = 0.3;
const LEAST_BETWEEN = 0.01;

export interface Group {
  readonly key: string;
  /** ln(actual / quoted) of each job. */
  readonly values: readonly number[];
}

export interface Shrunk {
  /** Variance of one job around its group. */
  readonly within: number;
  /** Variance of groups around the mean of all. */
  readonly between: number;
  readonly mean: number;
  readonly groups: ReadonlyMap<string, GroupMean>;
}

export interface GroupMean {
  readonly count: number;
  readonly own: number;
  /** Share of the common mean in `mean`, 1 with no job. */
  readonly pull: number;
  readonly mean: number;
}

const sumOf = (values: readonly number[]): number => values.reduce((sum, value) => sum + value, 0);
const meanOf = (values: readonly number[]): number => sumOf(values) / values.length;

/**
 * Means of groups pulled towards their common mean, the more the fewer jobs a group has. `towards` replaces the common mean.
 * Within: (v0 s0^2 + SS) / (v0 + sum(n - 1)); between by the method of moments, at least 0.01; pull = (s^2/n) / (t^2 + s^2/n).
 */
export function shrinkGroups(groups: readonly Group[], towards: (key: string) => number | null = () => null): Shrunk {
  const known = groups.filter(({ values }) => values.length > 0);
  const count = sumOf(known.map(({ values }) => values.length));
  const squares = sumOf(known.map(({ values }) => {
    const mean = meanOf(values);
    return sumOf(values.map((value) => (value - mean) ** 2));
  }));
  const within = (PRIOR_COUNT * PRIOR_DEVIATION ** 2 + squares) / (PRIOR_COUNT + count - known.length);
  const all = count === 0 ? 0 : meanOf(known.flatMap(({ values }) => values));
  const spread = sumOf(known.map(({ values }) => values.length * (meanOf(values) - all) ** 2)) / within;
  const size = count === 0 ? 0 : count - sumOf(known.map(({ values }) => values.length ** 2)) / count;
  const between = size > 0 ? Math.max(LEAST_BETWEEN, (within * (spread - (known.length - 1))) / size) : LEAST_BETWEEN;
  const weights = known.map(({ values }) => 1 / (between + within / values.length));
  const mean = known.length === 0 ? 0 : sumOf(known.map(({ values }, index) => weights[index]! * meanOf(values))) / sumOf(weights);
  const shrunk = groups.map(({ key, values }): readonly [string, GroupMean] => {
    const aim = towards(key) ?? mean;
    if (values.length === 0) return [key, { count: 0, own: aim, pull: 1, mean: aim }];
    const noise = within / values.length;
    const pull = noise / (between + noise);
    return [key, { count: values.length, own: meanOf(values), pull, mean: pull * aim + (1 - pull) * meanOf(values) }];
  });
  return { within, between, mean, groups: new Map(shrunk) };
}

/** A finished job of an outside trade. Working days. */
export interface PastJob {
  readonly tradeId: string;
  readonly craft: string;
  readonly quoted: number;
  readonly actual: number;
}

/** What to expect of a trade's next job. */
export interface LearnedRatio {
  /** Median of actual / quoted. */
  readonly factor: number;
  /** ln of it. */
  readonly mean: number;
  /** Standard deviation of ln(actual / quoted) of the next job. */
  readonly deviation: number;
  /** Jobs behind it: this trade's, its craft's, all. */
  readonly counts: { readonly trade: number; readonly craft: number; readonly all: number };
}

function groupBy(jobs: readonly PastJob[], keyOf: (job: PastJob) => string): Group[] {
  const groups = new Map<string, number[]>();
  for (const job of jobs) {
    const values = groups.get(keyOf(job)) ?? [];
    values.push(Math.log(job.actual / job.quoted));
    groups.set(keyOf(job), values);
  }
  return [...groups].map(([key, values]) => ({ key, values }));
}

/**
 * The ratio to expect of one trade, known or new: its own jobs pulled towards those of its craft, and these towards all.
 * Jobs with a quote or a time that is not positive are left out.
 */
export function learnRatio(jobs: readonly PastJob[], trade: { readonly tradeId: string; readonly craft: string }): LearnedRatio {
  const usable = jobs.filter(({ quoted, actual }) => quoted > 0 && actual > 0);
  const crafts = shrinkGroups(groupBy(usable, (job) => job.craft));
  const craft = crafts.groups.get(trade.craft);
  const aim = craft?.mean ?? crafts.mean;
  const craftOf = new Map(usable.map((job) => [job.tradeId, job.craft]));
  const trades = shrinkGroups(
    groupBy(usable, (job) => job.tradeId),
    (key) => crafts.groups.get(craftOf.get(key) ?? '')?.mean ?? null,
  );
  const own = trades.groups.get(trade.tradeId);
  const mean = own?.mean ?? aim;
  const uncertainty = trades.between * (own?.pull ?? 1) + (craft === undefined ? crafts.between : crafts.between * craft.pull) * (own?.pull ?? 1);
  return {
    factor: Math.exp(mean), mean, deviation: Math.sqrt(trades.within + uncertainty),
    counts: { trade: own?.count ?? 0, craft: craft?.count ?? 0, all: usable.length },
  };
}
