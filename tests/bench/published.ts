import type { Lag, Problem, Solution } from '@/lib/scheduling';
import type { CoreInstance, LagRelation } from '@/lib/scheduling/proof';

/** One line of a benchmark file: `succ` in PSPLIB sets, `arcs` in RCPSP/max sets. */
export interface PublishedCase {
  readonly id: string;
  readonly n: number;
  readonly cap: readonly number[];
  readonly dur: readonly number[];
  readonly req: readonly (readonly number[])[];
  readonly succ?: readonly (readonly number[])[];
  readonly arcs?: readonly (readonly [number, number, number])[];
  readonly lb: number | null;
  readonly ub: number | null;
  readonly cpm?: number;
  readonly status?: string;
}

/** Reads JSON lines as they come. */
export function readCases(text: string): PublishedCase[] {
  return text.split('\n').filter((line) => line.trim() !== '').map((line) => JSON.parse(line) as PublishedCase);
}

/** Start-to-start lags of a published case: a successor waits for the whole duration. */
export function toCore(published: PublishedCase): CoreInstance & { readonly relations: readonly LagRelation[] } {
  const relations: LagRelation[] = (published.arcs ?? []).map(([from, to, lag]) => ({ from, to, lag }));
  published.succ?.forEach((followers, from) => {
    for (const to of followers) relations.push({ from, to, lag: published.dur[from]! });
  });
  // Enough for any schedule that has no idle time but what lags force.
  const longest = published.dur.slice();
  for (const { from, lag } of relations) longest[from] = Math.max(longest[from]!, lag);
  return {
    durations: published.dur,
    capacities: published.cap,
    demands: published.req,
    relations,
    horizon: longest.reduce((sum, length) => sum + length, 0),
  };
}

/** A published case as any caller would state it: activities, resources, and a lag between starts for each relation. */
export function toProblem(published: PublishedCase): Problem {
  const { relations, horizon } = toCore(published);
  return {
    horizon: Math.max(1, horizon),
    calendars: [],
    resources: published.cap.map((capacity, k) => ({ id: `r${k}`, capacity })),
    activities: published.dur.map((duration, i) => ({
      id: `a${i}`,
      duration,
      mode: 'one-go',
      demands: published.req[i]!.map((amount, k) => ({ resource: `r${k}`, amount })).filter(({ amount }) => amount > 0),
    })),
    lags: relations.map(toLag),
  };
}

/** A negative lag is the maximum of the lag back. */
function toLag({ from, to, lag }: LagRelation, index: number): Lag {
  const at = 'start' as const;
  if (lag < 0) return { id: `l${index}`, from: { activity: `a${to}`, at }, to: { activity: `a${from}`, at }, max: -lag };
  return { id: `l${index}`, from: { activity: `a${from}`, at }, to: { activity: `a${to}`, at }, min: { kind: 'elapsed', minutes: lag } };
}

/** Start of each activity; empty when there is no schedule with everything in it. */
export function readStarts(published: PublishedCase, solution: Solution): readonly number[] {
  if (solution.status === 'infeasible' || solution.status === 'unknown' || solution.schedule.score.unplaced > 0) return [];
  const starts = new Map(solution.schedule.placements.map((placement) => [placement.activity, placement.start]));
  return published.dur.map((_, i) => starts.get(`a${i}`)!);
}

/**
 * What a schedule breaks, in words, read off the published fields alone. Empty for a feasible schedule of that makespan.
 */
export function checkStarts(published: PublishedCase, starts: readonly number[], makespan: number): string[] {
  const { dur, req, cap, n } = published;
  const broken: string[] = [];
  if (starts.length !== n) return [`${starts.length} starts for ${n} activities`];
  for (let i = 0; i < n; i++) if (!Number.isInteger(starts[i]) || starts[i]! < 0) broken.push(`activity ${i} starts at ${starts[i]}`);
  published.succ?.forEach((followers, i) => {
    for (const j of followers) if (starts[j]! < starts[i]! + dur[i]!) broken.push(`${j} starts at ${starts[j]} before ${i} ends at ${starts[i]! + dur[i]!}`);
  });
  for (const [i, j, lag] of published.arcs ?? []) {
    if (starts[j]! - starts[i]! < lag) broken.push(`${j} starts ${starts[j]! - starts[i]!} after ${i}, not ${lag}`);
  }
  cap.forEach((capacity, k) => {
    for (let i = 0; i < n; i++) {
      if (dur[i] === 0 || req[i]![k] === 0) continue;
      let use = 0;
      for (let j = 0; j < n; j++) if (dur[j]! > 0 && starts[j]! <= starts[i]! && starts[i]! < starts[j]! + dur[j]!) use += req[j]![k]!;
      if (use > capacity) broken.push(`resource ${k} holds ${use} of ${capacity} at ${starts[i]}`);
    }
  });
  const latest = Math.max(...starts.map((start, i) => start + dur[i]!));
  if (latest !== makespan) broken.push(`the last activity ends at ${latest}, not at ${makespan}`);
  return broken;
}
