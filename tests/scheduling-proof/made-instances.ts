import type { CoreInstance, Relation, StartRange } from '@/lib/scheduling/proof';

/** Whole numbers in [least, most], the same for a seed everywhere; a stream of its own, so that no change of the engine moves them. */
export function drawFrom(seed: number): (least: number, most: number) => number {
  let state = seed * 2654435761 % 4294967296;
  return (least, most) => {
    state = (Math.imul(state, 1664525) + 1013904223) >>> 0;
    return least + Math.floor((state / 4294967296) * (most - least + 1));
  };
}

interface Size {
  readonly activities: number;
  readonly resources: number;
  readonly capacity: number;
  readonly longest?: number;
}

/** Durations, capacities and demands; one activity in eight takes no time. */
function makeWork({ activities, resources, capacity, longest = 9 }: Size, draw: (least: number, most: number) => number) {
  return {
    durations: Array.from({ length: activities }, () => (draw(0, 7) === 0 ? 0 : draw(1, longest))),
    capacities: Array.from({ length: resources }, () => draw(capacity - (capacity >> 2), capacity)),
    demands: Array.from({ length: activities }, () => Array.from({ length: resources }, () => (draw(0, 2) === 0 ? 0 : draw(1, Math.ceil(capacity / 2))))),
  };
}

/** Finish to start alone. */
export function makePrecedence(size: Size, seed: number): CoreInstance {
  const draw = drawFrom(seed);
  const work = makeWork(size, draw);
  const relations: Relation[] = [];
  for (let j = 1; j < size.activities; j++) {
    for (let k = draw(0, 2); k > 0; k--) {
      const from = draw(Math.max(0, j - 12), j - 1);
      relations.push({ from, to: j, lag: work.durations[from]! });
    }
  }
  return { ...work, relations, horizon: work.durations.reduce((sum, d) => sum + d, 0) };
}

/** Lags that overlap or wait, and windows back that a plan in the order of the numbers keeps. */
export function makeWindows(size: Size, seed: number): CoreInstance {
  const { relations: before, ...work } = makePrecedence(size, seed);
  const draw = drawFrom(seed + 1000);
  const relations: Relation[] = [];
  for (const { from, to } of before) {
    const lag = draw(0, work.durations[from]! + 3);
    relations.push({ from, to, lag });
    if (draw(0, 3) === 0) relations.push({ from: to, to: from, lag: -(lag + draw(2, 9)) });
  }
  return { ...work, relations, horizon: work.horizon + 3 * size.activities };
}

/** Some waits made to depend on when they begin, and starts kept to sessions of a length that come again and again. */
export function makeSessions(base: CoreInstance, seed: number, session: number): CoreInstance {
  const { durations } = base;
  const draw = drawFrom(seed);
  const horizon = 3 * base.horizon + 4 * session;
  const relations = base.relations.map((relation): Relation => {
    if (!('lag' in relation) || relation.lag < 0 || draw(0, 2) > 0) return relation;
    const { from, to, lag } = relation;
    const turn = draw(5, 40);
    return { from, to, pieces: [{ from: 0, value: lag + 3, slope: 1 }, { from: turn, value: turn + lag + 4, slope: 0 }, { from: turn + 5 + lag, value: turn + 6 + 2 * lag, slope: 1 }] };
  });
  const allowedStarts = durations.map((d): StartRange[] | null => {
    if (draw(0, 2) === 0) return null;
    const ranges: StartRange[] = [];
    for (let at = draw(0, 5); at + session <= horizon; at += session + (session >> 1)) ranges.push({ first: at, last: at + session - d });
    return ranges;
  });
  return { ...base, relations, allowedStarts, horizon };
}
