/**
 * Runs the engine over a file of published cases: `npm run bench -- --set <file.jsonl> --seconds S [--limit N] [--seed K] [--clock wall|cpu]`.
 * `--limit` takes N cases spread over the file; `--clock cpu` counts this process's own processor time, for a machine that is
 * busy with other work. A JSON line a case, then a summary line; every schedule is checked.
 */
import { readFileSync } from 'node:fs';
import { unwrap } from '@/lib/result';
import { afterTime, check, solve } from '@/lib/scheduling';
import { checkStarts, readCases, readStarts, toProblem } from './published';
import type { PublishedCase } from './published';
import { runSeries } from './series-run';

interface Options {
  readonly set: string;
  readonly seconds: number;
  readonly limit: number;
  readonly seed: number;
  readonly clock: 'wall' | 'cpu';
}

interface Row {
  readonly published: PublishedCase;
  /** `unknown`: neither a schedule with everything in it nor a proof that there is none. */
  readonly status: 'optimal' | 'feasible' | 'infeasible' | 'unknown';
  /** -1 without such a schedule. */
  readonly makespan: number;
  readonly lowerBound: number;
  readonly schedulesTried: number;
  readonly seconds: number;
}

function readOptions(args: readonly string[]): Options {
  const given = new Map<string, string>();
  for (let k = 0; k < args.length; k += 2) {
    const name = args[k] ?? '';
    const value = args[k + 1];
    if (!['--set', '--seconds', '--limit', '--seed', '--clock'].includes(name) || value === undefined) {
      throw new Error(`Cannot read ${name}: use --set <file.jsonl> --seconds S [--limit N] [--seed K] [--clock wall|cpu].`);
    }
    given.set(name, value);
  }
  const set = given.get('--set');
  if (set === undefined) throw new Error('Name the file of cases: --set <file.jsonl>.');
  const number = (name: string, otherwise: number): number => {
    const value = Number(given.get(name) ?? otherwise);
    if (!(value >= 0)) throw new Error(`${name} needs a number >= 0.`);
    return value;
  };
  return { set, seconds: number('--seconds', 10), limit: number('--limit', 0), seed: number('--seed', 1), clock: given.get('--clock') === 'cpu' ? 'cpu' : 'wall' };
}

/** Milliseconds, on the clock on the wall or of this process's work on all its threads. */
function readClock(clock: Options['clock']): number {
  if (clock === 'wall') return performance.now();
  const { user, system } = process.cpuUsage();
  return (user + system) / 1000;
}

/** Cases spread evenly over the file. */
function sampleCases(cases: readonly PublishedCase[], limit: number): PublishedCase[] {
  if (limit === 0 || limit >= cases.length) return cases.slice();
  return Array.from({ length: limit }, (_, k) => cases[Math.floor((k * cases.length) / limit)]!);
}

/** One case through the engine's public interface, as any other problem. */
function solveCase(published: PublishedCase, options: Options): Row {
  const problem = toProblem(published);
  const begin = readClock(options.clock);
  const clock = (): number => readClock(options.clock) - begin;
  const solution = unwrap(solve(problem, { seed: options.seed, stop: afterTime(clock, options.seconds * 1000) }));
  const seconds = clock() / 1000;
  const starts = readStarts(published, solution);
  const isWhole = starts.length > 0;
  const makespan = isWhole && 'schedule' in solution ? solution.schedule.score.makespan : -1;
  const row: Row = {
    published,
    seconds,
    makespan,
    status: solution.status === 'infeasible' || isWhole ? solution.status : 'unknown',
    lowerBound: solution.status === 'infeasible' ? 0 : solution.lowerBound,
    schedulesTried: solution.status === 'infeasible' ? 0 : solution.schedulesTried,
  };
  const broken = isWhole ? checkStarts(published, starts, makespan) : [];
  if ('schedule' in solution) broken.push(...check(problem, solution.schedule).map((violation) => violation.message));
  const contradiction = contradict(row);
  if (contradiction !== null) broken.push(contradiction);
  if (broken.length > 0) throw new Error(`${published.id}: ${broken.join('; ')}`);
  return row;
}

/** A proof that goes against the published bounds. */
function contradict({ published, lowerBound, makespan, status }: Row): string | null {
  if (status === 'infeasible') return published.ub === null ? null : `called infeasible, but ${published.ub} is known`;
  if (published.ub !== null && lowerBound > published.ub) return `bound ${lowerBound} is above the known ${published.ub}`;
  if (published.lb !== null && makespan >= 0 && makespan < published.lb) return `makespan ${makespan} is below the known bound ${published.lb}`;
  return null;
}

function mean(values: readonly number[]): number | null {
  return values.length === 0 ? null : values.reduce((sum, v) => sum + v, 0) / values.length;
}

function median(values: readonly number[]): number {
  const sorted = values.toSorted((a, b) => a - b);
  return sorted.length === 0 ? 0 : sorted[sorted.length >> 1]!;
}

function round(value: number | null, digits: number): number | null {
  return value === null ? null : Number(value.toFixed(digits));
}

function summarise(rows: readonly Row[], options: Options): object {
  const planned = rows.filter((row) => row.makespan >= 0);
  const withKnown = planned.filter((row) => row.published.ub !== null);
  const withPath = planned.filter((row) => (row.published.cpm ?? 0) > 0);
  const decided = rows.filter((row) => row.status === 'optimal' || row.status === 'infeasible');
  return {
    set: options.set.split('/').at(-1),
    cases: rows.length,
    secondsLimit: options.seconds,
    clock: options.clock,
    seed: options.seed,
    proven: rows.filter((row) => row.status === 'optimal').length,
    infeasible: rows.filter((row) => row.status === 'infeasible').length,
    decided: decided.length,
    planned: planned.length,
    knownFeasibleUnplanned: rows.filter((row) => row.published.ub !== null && row.makespan < 0).length,
    medianSeconds: round(median(rows.map((row) => row.seconds)), 4),
    meanSeconds: round(mean(rows.map((row) => row.seconds)), 3),
    meanGapToKnownPercent: round(mean(withKnown.map((row) => 100 * (row.makespan / row.published.ub! - 1))), 3),
    betterThanKnown: withKnown.filter((row) => row.makespan < row.published.ub!).length,
    meanAboveCriticalPathPercent: round(mean(withPath.map((row) => 100 * (row.makespan / row.published.cpm! - 1))), 3),
    megabytes: Math.round(process.memoryUsage().rss / 1e6),
  };
}

if (process.argv.includes('--series')) process.exit(runSeries(process.argv.slice(2)));
const options = readOptions(process.argv.slice(2));
const rows: Row[] = [];
for (const published of sampleCases(readCases(readFileSync(options.set, 'utf8')), options.limit)) {
  const row = solveCase(published, options);
  rows.push(row);
  console.log(JSON.stringify({
    id: published.id, makespan: row.makespan, lowerBound: row.lowerBound, status: row.status, seconds: round(row.seconds, 4), seed: options.seed,
    known: published.ub, schedulesTried: row.schedulesTried,
  }));
}
console.log(JSON.stringify(summarise(rows, options)));
