/** Runs the engine over made-up series: `--series N --seconds S [--seed K] [--clock wall|cpu]`. One JSON line. */
import { check, solve, type Score } from '@/lib/scheduling';
import { makeSeries } from './series';

/** Milliseconds, on the clock on the wall or of this process's work. */
function readClock(isCpu: boolean): number {
  if (!isCpu) return performance.now();
  const { system, user } = process.cpuUsage();
  return (user + system) / 1000;
}

const MARKS = [0.1, 0.3, 1, 3, 10, 30];

interface Mark {
  readonly second: number;
  readonly tardiness: number;
  readonly makespan: number;
}

/** Makes the series, plans it, checks the plan and prints what it took; 0 when all went well. */
export function runSeries(args: readonly string[]): number {
  const given = new Map(args.flatMap((name, k) => (k % 2 === 0 ? [[name, args[k + 1] ?? ''] as const] : [])));
  const tasks = Number(given.get('--series'));
  const seconds = Number(given.get('--seconds') ?? 1);
  const seed = Number(given.get('--seed') ?? 1);
  const isCpu = given.get('--clock') === 'cpu';
  if (!(tasks > 0) || !(seconds > 0)) throw new Error('Use --series N --seconds S [--seed K] [--clock wall|cpu].');
  const problem = makeSeries(tasks, seed);
  const begin = readClock(isCpu);
  const passed = () => (readClock(isCpu) - begin) / 1000;
  let first: number | null = null;
  const marks: Mark[] = [];
  const stop = { share: ({ best }: { readonly best: Score | null }) => {
    const at = passed();
    if (best !== null) {
      first ??= at;
      for (const second of MARKS.slice(marks.length)) if (at >= second) marks.push({ second, tardiness: best.tardiness, makespan: best.makespan });
    }
    return Math.min(1, at / seconds);
  } };
  const solution = solve(problem, { stop, seed });
  if (!solution.ok || !('schedule' in solution.value)) throw new Error(`No plan: ${JSON.stringify(solution)}`);
  const { lowerBound, schedule, schedulesTried, status } = solution.value;
  const took = passed();
  const broken = check(problem, schedule);
  if (broken.length > 0) throw new Error(`The plan breaks its rules: ${broken.slice(0, 3).map((violation) => violation.message).join(' ')}`);
  console.log(JSON.stringify({
    tasks, seed, activities: problem.activities.length, status, firstMs: Math.round(1000 * (first ?? took)), seconds: Number(took.toFixed(2)), schedulesTried,
    ...schedule.score, lowerBound, aboveBoundDays: Number(((schedule.score.makespan - lowerBound) / 1440).toFixed(1)), marks,
    megabytes: Math.round(process.memoryUsage().rss / 1e6), load: 'cpu' === given.get('--clock') ? 'cpu clock' : 'wall clock',
  }));
  return 0;
}
