/**
 * Fixed problems, seeds and amounts of work, and all that the engine says of them. Each field is a value or the hash of many.
 * They are written to tests/golden by tests/bench/record-engine.ts and compared by engine-recorded.test.ts.
 */
import { readFileSync } from 'node:fs';
import { unwrap } from '@/lib/result';
import { afterWork, check, explainChain, explainPlacement, repair, Replay, solve, Standing, type Activity, type Problem, type Schedule, type Solution } from '@/lib/scheduling';
import { compile } from '@/lib/scheduling/compile';
import { Search } from '@/lib/scheduling/improve';
import { arrange } from '@/lib/scheduling/order';
import { propagate } from '@/lib/scheduling/propagate';
import { Random } from '@/lib/scheduling/random';
import { reverse } from '@/lib/scheduling/reverse';
import { readCases, toProblem } from '../bench/published';
import { Dice, makeSeries } from '../bench/series';
import { makeMixed } from './mixed';
import { Digest, digestOf, traceSearch } from './trace';

export type Fields = Readonly<Record<string, string | number | null>>;

/** What is recorded of one problem, made when asked for. */
export interface RecordedCase {
  readonly id: string;
  readonly make: () => Fields;
}

const factText = (fact: object): string => Object.values(fact).map((value) => (Array.isArray(value) ? `[${value.join(' ')}]` : String(value))).join(' ');

/** One by one where a person can still read them. */
const list = (values: readonly (string | number)[]): string => (values.length > 24 ? `#${new Digest().add(...values).text}` : values.join(' '));

function fieldsOfSchedule(problem: Problem, { placements, score, unplaced }: Schedule): Fields {
  const placed = new Map(placements.map((placement) => [placement.activity, placement]));
  return {
    score: [score.unplaced, score.tardiness, score.shortages, score.moved, score.makespan, score.cost, score.sumOfEnds].join(' '),
    starts: list(problem.activities.map(({ id }) => placed.get(id)?.start ?? '-')),
    ends: digestOf(placements.map(({ end, pieces }) => [end, pieces])),
    people: list(placements.flatMap(({ crew }) => (crew.length > 0 ? [crew.join('+')] : []))),
    ...(unplaced.length > 0 ? { leftOut: list(unplaced.map(({ activity, because, waitsFor }) => `${activity}: ${because.map(factText).join(', ')} (${waitsFor.join(' ')});`)) } : {}),
  };
}

function fieldsOf(problem: Problem, solution: Solution): Fields {
  if (solution.status === 'infeasible') {
    const { activities, facts } = solution.contradiction;
    return { status: solution.status, facts: facts.map(factText).join(', '), activities: activities.join(' ') };
  }
  const tried = { status: solution.status, bound: solution.lowerBound, tried: solution.schedulesTried };
  return solution.status === 'unknown' ? tried : { ...tried, ...fieldsOfSchedule(problem, solution.schedule) };
}

const prefix = (name: string, fields: Fields): Fields => Object.fromEntries(Object.entries(fields).map(([key, value]) => [`${name} ${key}`, value]));

/** Why everything is where it is, and the chain behind it. */
function fieldsOfReasons(problem: Problem, schedule: Schedule): Fields {
  const ids = schedule.placements.map(({ activity }) => activity);
  return {
    reasons: digestOf(ids.map((id) => explainPlacement(problem, schedule, id))),
    chains: digestOf(ids.map((id) => explainChain(problem, schedule, id).map(({ activity, reason, start }) => [activity, start, reason?.until]))),
  };
}

/** What a person is told who moves work by hand. */
function fieldsOfHand(problem: Problem, schedule: Schedule, ids: readonly string[]): Fields {
  const standing = new Standing(problem, schedule);
  const { horizon } = problem;
  const dates = new Map(schedule.placements.map(({ activity, start }) => [activity, start]));
  const tried = ids.flatMap((id) => [dates.get(id) ?? 0, (dates.get(id) ?? 0) + 5, Math.floor(horizon / 3), 0, horizon - 10].map((at) => standing.tryStart(id, at)));
  return {
    verdicts: list(['fits', 'displaces', 'impossible'].map((verdict) => tried.filter((trial) => trial.verdict === verdict).length)),
    hand: digestOf(tried),
    earliest: list(ids.map((id) => standing.earliest(id, Math.floor(horizon / 9), horizon) ?? '-')),
  };
}

/** The plan as accepted, with one thing that changed. */
function accept(problem: Problem, schedule: Schedule, shift: number): Problem {
  const placed = new Map(schedule.placements.map((placement) => [placement.activity, placement]));
  const late = schedule.placements[Math.floor(schedule.placements.length / 3)]?.activity;
  const keep = ({ previousCrew: _crew, previousStart: _start, ...row }: Activity): Activity => {
    const own = placed.get(row.id);
    const dated = own === undefined ? row : { ...row, previousStart: own.start, ...(own.crew.length > 0 ? { previousCrew: own.crew } : {}) };
    return row.id === late && own !== undefined && row.pin === undefined ? { ...dated, release: own.start + shift } : dated;
  };
  return { ...problem, objective: ['tardiness', 'moved', 'shortages', 'makespan', 'cost'], activities: problem.activities.map(keep) };
}

function fieldsOfRepair(problem: Problem, schedule: Schedule, moves: number): Fields {
  const input = accept(problem, schedule, Math.ceil(problem.horizon / 40));
  const { result, trace } = traceSearch(() => repair(input, moves));
  const { score, starts, status, tried } = fieldsOf(input, result) as Record<string, string | number>;
  return prefix('repair', { status: status!, ...(score === undefined ? {} : { score, starts: starts!, tried: tried! }), trace: digestOf(trace) });
}

const gcd = (a: number, b: number): number => (b === 0 ? a : gcd(b, a % b));

/** The step of time that all lengths are made of: lengths changed by it still touch. */
const gridOf = ({ activities }: Problem): number => activities.reduce((step, { duration }) => gcd(step, duration), 0) || 1;

function fieldsOfReplay(problem: Problem, schedule: Schedule, seed: number, runs: number): Fields {
  const dice = new Dice(seed);
  const grid = gridOf(problem);
  const { horizon } = problem;
  const replay = new Replay(problem, schedule.placements, problem.resources.filter((_, k) => k % 3 !== 0).map(({ id }) => id));
  const dates = new Digest();
  const note = () => {
    replay.run();
    dates.addNumbers(replay.start).addNumbers(replay.end).addNumbers(replay.isPlaced).addNumbers([replay.missedWindows]);
    dates.addNumbers(replay.start.map((_, i) => (replay.isPlaced[i] === 1 ? replay.binding(i) : -2)));
  };
  note();
  const plain = [...replay.start].map((start, i) => (replay.isPlaced[i] === 1 ? start : '-'));
  for (let run = 0; run < runs; run += 1) {
    replay.duration.forEach((minutes, i) => {
      if (minutes > 0) replay.duration[i] = grid * Math.ceil((minutes * dice.whole(60, 190)) / 100 / grid);
      if (dice.is(0.1)) replay.release[i] = dice.whole(0, Math.floor(horizon / 3));
      if (dice.is(0.08)) replay.isLeftOut[i] = 1;
      if (dice.is(0.3)) replay.stretchStates(i, dice.whole(500, 2500));
      if (i > 0) replay.standIn[i] = i - 1;
    });
    problem.lags.forEach((_, lag) => {
      if (dice.is(0.3)) replay.stretchLag(lag, dice.whole(500, 2500));
      else if (dice.is(0.2)) replay.setLag(lag, dice.whole(0, Math.floor(horizon / 20)));
    });
    problem.resources.forEach((_, resource) => {
      const from = dice.whole(0, Math.floor(horizon / 2));
      if (resource % 3 !== 0 && dice.is(0.3)) replay.block(resource, from, from + dice.whole(1, Math.floor(horizon / 8)));
    });
    note();
    replay.reset();
  }
  note();
  const longest = problem.activities.map((_, i) => replay.longestDuration(i, Math.floor(horizon / 3)));
  return { 'replay starts': list(plain), 'replay runs': dates.text, 'replay longest': list(longest) };
}

function solveTraced(problem: Problem, work: number, seed: number): { readonly solution: Solution; readonly fields: Fields } {
  const told = new Digest();
  const { result, trace } = traceSearch(() => unwrap(solve(problem, {
    stop: afterWork(work), seed, onProgress: ({ best, lowerBound, schedulesTried, share }) => told.add(schedulesTried, best?.makespan ?? -1, best?.tardiness ?? -1, lowerBound, Math.round(1000 * share)),
  })));
  const { built, cut, looks, schedules, steps } = trace;
  return { solution: result, fields: { ...fieldsOf(problem, result), schedules, steps, work: `${built} ${cut} ${looks}`, told: told.text } };
}

function recordWhole(problem: Problem, { hand, moves, runs, seed, work }: { readonly work: number; readonly seed: number; readonly moves: number; readonly runs: number; readonly hand: number }): Fields {
  const { fields, solution } = solveTraced(problem, work, seed);
  if (!('schedule' in solution)) return fields;
  const { schedule } = solution;
  const broken = check(problem, schedule).length;
  if (broken > 0) throw new Error(`The schedule breaks ${broken} rules.`);
  const step = Math.max(1, Math.floor(problem.activities.length / hand));
  const ids = problem.activities.filter((_, k) => k % step === 0).map(({ id }) => id);
  return {
    ...fields, ...fieldsOfReasons(problem, schedule), ...fieldsOfHand(problem, schedule, ids), ...fieldsOfRepair(problem, schedule, moves), ...fieldsOfReplay(problem, schedule, seed, runs),
  };
}

const readPublished = (file: string) => readCases(readFileSync(new URL(`../golden/${file}`, import.meta.url), 'utf8'));

/** The search by lists alone, as where the core has no room: with time running backwards. */
function recordLists(problem: Problem, work: number, seed: number): Fields {
  const model = compile(problem);
  const facts = propagate(model);
  const mirrored = reverse(problem);
  const back = mirrored === null ? null : propagate(mirrored);
  if (!facts.ok || mirrored === null || back === null || !back.ok) throw new Error('Not a case for this search.');
  const mirror = { model: mirrored, order: arrange(mirrored), bounds: back.bounds };
  const { result, trace } = traceSearch(() => {
    const search: Search = new Search({ model, order: arrange(model), bounds: facts.bounds, mirror, random: new Random(seed), isOver: () => search.schedulesTried >= work });
    search.run();
    return search;
  });
  return { terms: [...result.incumbent.terms].join(' '), tried: result.schedulesTried, starts: list([...result.incumbent.start]), schedules: trace.schedules, steps: trace.steps, work: `${trace.built} ${trace.cut} ${trace.looks}` };
}

const count = (size: number): readonly number[] => Array.from({ length: size }, (_, k) => k + 1);

/** Many seeds of what mixes everything; a few of them long enough that the search has to begin anew. */
const mixed: readonly RecordedCase[] = count(150).map((seed) => ({
  id: `mixed ${seed}`, make: () => recordWhole(makeMixed(seed), { work: seed % 10 === 0 ? 500 : 45, seed, moves: 20, runs: 3, hand: 20 }),
}));

const series: readonly RecordedCase[] = [[20, 1, 300], [20, 5, 60], [30, 2, 60], [40, 3, 40], [60, 1, 40]].map(([size, seed, work]) => ({
  id: `series of ${size} tasks, seed ${seed}`, make: () => recordWhole(makeSeries(size!, seed!), { work: work!, seed: 1, moves: 15, runs: 4, hand: 8 }),
}));

const published: readonly RecordedCase[] = [
  ...readPublished('published-psplib.jsonl').filter(({ n }) => n < 40).map((one, k) => ({ id: `lists for ${one.id}`, make: () => recordLists(toProblem(one), k === 1 ? 400 : 60, k) })),
  ...readPublished('published-psplib.jsonl').filter((_, k) => k === 1 || k === 6).map((one) => ({ id: `${one.id}, first plan`, make: () => solveTraced(toProblem(one), 20, 1).fields })),
];

/** Many problems in which what touches and just fits is common, a few schedules of each: one hash for ten. */
function recordTight(first: number): Fields {
  const [ways, replays] = [new Digest(), new Digest()];
  for (let seed = first; seed < first + 10; seed += 1) {
    const input = makeMixed(seed, true);
    const { fields, solution } = solveTraced(input, 8, seed);
    ways.add(...Object.values(fields).map(String));
    if ('schedule' in solution) replays.add(...Object.values(fieldsOfReplay(input, solution.schedule, seed, 3)).map(String));
  }
  return { ways: ways.text, replays: replays.text };
}

const tight: readonly RecordedCase[] = count(30).map((k) => ({ id: `tight from ${10 * k}`, make: () => recordTight(10 * k) }));

export const recordings: Readonly<Record<string, readonly RecordedCase[]>> = { mixed, series, published, tight };

export const fileOf = (name: string): URL => new URL(`../golden/engine-${name}.json`, import.meta.url);
