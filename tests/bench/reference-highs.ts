import loadHighs from 'highs';
import { toCore } from './published';
import type { PublishedCase } from './published';
import type { ReferenceAnswer } from './reference-minizinc';

/**
 * Solves with HiGHS as a mixed integer program: one yes/no for each activity and start (Pritsker, Watters, Wolfe 1969), lags
 * in their disaggregated form (Christofides, Alvarez-Valdes, Tamarit 1987). `horizon` is an end that some plan meets, which
 * keeps the program small: the answer is that length again when nothing is shorter.
 */
export async function solveByHighs(published: PublishedCase, horizon: number, seconds: number, clock: () => number): Promise<ReferenceAnswer> {
  const highs = await loadHighs();
  const text = writeProgram(published, horizon);
  const begin = clock();
  const answer = text === null ? null : highs.solve(text, { time_limit: seconds, mip_rel_gap: 0 });
  const spent = (clock() - begin) / 1000;
  if (answer === null || answer.Status === 'Infeasible') return { status: 'infeasible', makespan: -1, seconds: spent };
  if (answer.Status !== 'Optimal') return { status: 'unknown', makespan: -1, seconds: spent };
  return { status: 'optimal', makespan: Math.round(answer.ObjectiveValue), seconds: spent };
}

/** First and last start of each activity by its lags alone; null when there is none. */
function findWindows(published: PublishedCase, horizon: number): { readonly first: number[]; readonly last: number[] } | null {
  const { durations, relations } = toCore(published);
  const first = durations.map(() => 0);
  const last = durations.map((duration) => horizon - duration);
  for (let isChanged = true; isChanged;) {
    isChanged = false;
    for (const { from, lag, to } of relations) {
      if (first[from]! + lag > first[to]!) { first[to] = first[from]! + lag; isChanged = true; }
      if (last[to]! - lag < last[from]!) { last[from] = last[to]! - lag; isChanged = true; }
    }
    if (first.some((start, i) => start > last[i]!)) return null;
  }
  return { first, last };
}

/** So many of the starts of an activity, as a row of a program. */
function sum(i: number, list: readonly number[], factor: number): string {
  return list.map((t) => `+ ${factor} x${i}_${t}`).join(' ');
}

function writeProgram(published: PublishedCase, horizon: number): string | null {
  const windows = findWindows(published, horizon);
  if (windows === null) return null;
  const { capacities, demands, durations, relations } = toCore(published);
  const { first, last } = windows;
  const starts = (i: number, from: number, to: number): number[] => Array.from({ length: Math.max(0, Math.min(to, last[i]!) - Math.max(from, first[i]!) + 1) }, (_, k) => Math.max(from, first[i]!) + k);
  const rows: string[] = durations.map((_, i) => `${sum(i, starts(i, 0, horizon), 1)} = 1`);
  durations.forEach((duration, i) => rows.push(`finish ${starts(i, 0, horizon).filter((t) => t > 0).map((t) => `- ${t} x${i}_${t}`).join(' ')} >= ${duration}`));
  for (const { from, lag, to } of relations) {
    for (let t = first[from]!; t <= last[from]!; t++) {
      const early = starts(to, 0, t + lag - 1);
      if (early.length > 0) rows.push(`${sum(from, starts(from, t, horizon), 1)} ${sum(to, early, 1)} <= 1`);
    }
  }
  capacities.forEach((capacity, k) => {
    for (let t = 0; t < horizon; t++) {
      const uses = durations.map((duration, i) => (demands[i]![k]! > 0 && duration > 0 ? sum(i, starts(i, t - duration + 1, t), demands[i]![k]!) : '')).filter((part) => part !== '');
      if (uses.length > 0) rows.push(`${uses.join(' ')} <= ${capacity}`);
    }
  });
  const names = durations.flatMap((_, i) => starts(i, 0, horizon).map((t) => `x${i}_${t}`));
  return ['Minimize', ' obj: finish', 'Subject To', ...rows.map((row, k) => ` c${k}: ${row}`), 'Binary', ...names.map((name) => ` ${name}`), 'End'].join('\n');
}
