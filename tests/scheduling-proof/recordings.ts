import { readFileSync } from 'node:fs';
import { solveCore, type CoreInstance, type CoreOptions } from '@/lib/scheduling/proof';
import { closeRelations, listRivals } from '@/lib/scheduling/proof/closure';
import { Engine, type Branching } from '@/lib/scheduling/proof/engine';
import { orderForward } from '@/lib/scheduling/proof/forward';
import { Genetic } from '@/lib/scheduling/proof/genetic';
import { Neighbourhood } from '@/lib/scheduling/proof/neighbourhood';
import { buildNetwork, listOpenPairs } from '@/lib/scheduling/proof/network';
import { Random } from '@/lib/scheduling/proof/random';
import { Serial } from '@/lib/scheduling/proof/serial';
import { readCases, toCore } from '../bench/published';
import { makePrecedence, makeSessions, makeWindows } from './made-instances';
import { Hash, hashOf, traceEngine } from './trace';

/** What was seen, by name: counts as numbers, hashes and rows as text. */
export type Recording = Readonly<Record<string, string | number>>;

const read = (name: string): readonly (readonly [string, CoreInstance])[] =>
  readCases(readFileSync(new URL(`../golden/${name}`, import.meta.url), 'utf8')).map((row) => [row.id, toCore(row)]);

/** Published cases by their names (PSPLIB: Kolisch & Sprecher 1996; RCPSP/max: Schwindt 1998), and made-up ones. */
const instances = new Map<string, CoreInstance>([
  ...read('published-psplib.jsonl'), ...read('published-max-lags.jsonl'),
  ['tight', makePrecedence({ activities: 18, resources: 2, capacity: 6 }, 10)],
  ['loose', makePrecedence({ activities: 24, resources: 5, capacity: 200 }, 2)],
  ['slow', makePrecedence({ activities: 20, resources: 1, capacity: 5, longest: 120 }, 9)],
  ['large', makePrecedence({ activities: 90, resources: 3, capacity: 9 }, 4)],
  ['middle', makePrecedence({ activities: 48, resources: 3, capacity: 8 }, 5)],
  ['windows', makeWindows({ activities: 24, resources: 2, capacity: 6 }, 4)],
  ['wide windows', makeWindows({ activities: 30, resources: 3, capacity: 40 }, 11)],
  ['no way', makeWindows({ activities: 30, resources: 3, capacity: 40 }, 7)],
  ['sessions', makeSessions(makePrecedence({ activities: 20, resources: 2, capacity: 5 }, 7), 7, 20)],
  ['short sessions', makeSessions(makePrecedence({ activities: 16, resources: 4, capacity: 300 }, 9), 9, 12)],
  ['windows in sessions', makeSessions(makeWindows({ activities: 24, resources: 1, capacity: 6 }, 9), 9, 26)],
]);

function find(name: string): CoreInstance {
  const instance = instances.get(name);
  if (!instance) throw new Error(`No instance ${name}`);
  return instance;
}

/** The answer, and on the way to it each better plan and bound, by work. */
function recordSolve(name: string, work: number, more: Partial<CoreOptions> = {}): Recording {
  const told: string[] = [];
  const solution = solveCore(find(name), {
    seed: 1,
    stop: (progress) => progress.work > work,
    onProgress: ({ makespan, lowerBound, work: spent }) => told.push(`${makespan}/${lowerBound}@${spent}`),
    ...more,
  });
  const { status, makespan, lowerBound, schedules, conflicts, entries, starts } = solution;
  return { status, makespan, lowerBound, schedules, conflicts, entries, starts: hashOf(starts), told: told.join(' ') };
}

function makeEngine(instance: CoreInstance, looksAtWindows: boolean): Engine {
  return new Engine(buildNetwork(instance, closeRelations(instance)), looksAtWindows);
}

/** A search that shortens the plan again and again; every bound moved, every clause learnt. */
function recordEngine(name: string, conflicts: number, branching: Branching, looksAtWindows = true): Recording {
  const engine = makeEngine(find(name), looksAtWindows);
  const outcomes: string[] = [];
  const path = traceEngine(engine, () => {
    const mk = engine.network.makespan;
    while (engine.conflicts < conflicts) {
      const outcome = engine.search(conflicts - engine.conflicts, branching);
      outcomes.push(outcome === 'solution' ? String(engine.least(mk)) : outcome);
      if (outcome !== 'solution' || !engine.restrict(2 * mk + 1, 1 - engine.least(mk))) break;
    }
  });
  const { atoms, clauses } = engine;
  return {
    outcomes: outcomes.join(' '), conflicts: engine.conflicts, work: engine.work, ...path,
    kept: clauses.count, arena: hashOf(clauses.arena), atoms: `${atoms.count} ${hashOf(atoms.variable)} ${hashOf(atoms.threshold)}`,
  };
}

/** A search whose clauses are thinned out on the way. */
function recordThinned(name: string, most: number, turns: number): Recording {
  const engine = makeEngine(find(name), true);
  const kept: number[] = [];
  const path = traceEngine(engine, () => {
    engine.restrict(2 * engine.network.makespan + 1, -most);
    for (let k = 0; k < turns; k++) {
      engine.search(90, 'activity');
      if (!engine.settleRoot()) return;
      engine.clauses.reduce(40 + 5 * k);
      kept.push(engine.clauses.count);
    }
  });
  return { ...path, kept: kept.join(' '), arena: hashOf(engine.clauses.arena) };
}

/** A search just above the bound, with an assumption. */
function recordAssumption(name: string, first: number, conflicts: number): Recording {
  const engine = makeEngine(find(name), true);
  const mk = engine.network.makespan;
  const outcomes: string[] = [];
  const path = traceEngine(engine, () => {
    for (let bound = first; bound < first + 6; bound++) {
      const asked = engine.conflicts;
      const outcome = engine.search(conflicts, 'activity', Int32Array.of(2 * mk + 1, -bound), () => engine.conflicts > asked + 100);
      outcomes.push(`${bound} ${outcome} ${engine.conflicts}`);
      if (outcome === 'solution') break;
    }
  });
  return { outcomes: outcomes.join(', '), ...path };
}

/** The instance as the search sees it. */
function recordNetwork(name: string): Recording {
  const instance = find(name);
  const closure = closeRelations(instance);
  const network = buildNetwork(instance, closure);
  const engine = new Engine(network, true);
  const isOpen = engine.settleRoot();
  const { head, leaving, edgeFrom, edgeTo, edgeLag, edgeCurve, edgeIf } = network;
  return {
    distance: closure ? hashOf(closure.distance) : '', cycleAt: closure?.cycleAt ?? -2, rivals: listRivals(instance).length, open: listOpenPairs(instance, closure).length,
    rows: hashOf(head), leaving: hashOf(leaving), from: hashOf(edgeFrom), to: hashOf(edgeTo), lag: hashOf(edgeLag), curve: hashOf(edgeCurve), condition: hashOf(edgeIf),
    isOpen: isOpen ? 1 : 0, root: hashOf(engine.trail.value), work: engine.work,
  };
}

/** Lists scheduled from both sides, and sorted. */
function recordSerial(name: string, lists: number): Recording {
  const instance = find(name);
  const order = orderForward(instance)!;
  const serial = new Serial(instance, order);
  const random = new Random(5);
  const [forward, backward, sorted] = [new Hash(), new Hash(), new Hash()];
  const list = order.slice();
  for (let k = 0; k < lists; k++) {
    const at = random.below(list.length - 1);
    if (!instance.relations.some(({ from, to }) => from === list[at] && to === list[at + 1])) [list[at], list[at + 1]] = [list[at + 1]!, list[at]!];
    const length = serial.forward(list);
    forward.add(length).addRow(serial.start).add(serial.forward(list, length - 1), serial.forward(list, length));
    const byStart = list.slice();
    serial.sortByStart(byStart);
    serial.sortByEnd(list);
    sorted.addRow(byStart).addRow(list);
    backward.add(serial.backward(list, length) ? 1 : 0).addRow(serial.start);
    backward.add(serial.backward(list, length - 1) ? 1 : 0).addRow(serial.start);
  }
  return { passes: serial.passes, isTurnable: serial.isTurnable ? 1 : 0, forward: String(forward), backward: String(backward), sorted: String(sorted) };
}

/** Parents after so many children, told by what is recalled of them. */
function recordGenetic(name: string, steps: number): Recording {
  const instance = find(name);
  const genetic = new Genetic(instance, orderForward(instance)!, new Random(3));
  const start = new Int32Array(instance.durations.length);
  const seen = new Hash();
  const lengths: number[] = [];
  const recall = (): void => {
    for (let k = 0; k < 12; k++) lengths.push(genetic.recall(start));
    seen.addRow(start);
  };
  const breed = (children: number): void => {
    for (let k = 0; k < children; k++) genetic.step();
    recall();
  };
  recall();
  breed(steps);
  genetic.adopt(genetic.bestStart);
  genetic.enlarge(80);
  breed(steps);
  genetic.renew();
  genetic.adopt(genetic.bestStart);
  breed(steps >> 1);
  return { best: genetic.best, passes: genetic.passes, starts: hashOf(genetic.bestStart), lengths: hashOf(lengths), seen: String(seen) };
}

/** Neighbourhoods of a plan, one after the other. */
function recordNeighbourhood(name: string, turns: number): Recording {
  const instance = find(name);
  const engine = makeEngine(instance, true);
  if (engine.search(500, 'earliest') !== 'solution') throw new Error(`No plan for ${name}`);
  const start = Int32Array.from(instance.durations, (_, i) => engine.least(i));
  const neighbourhood = new Neighbourhood(instance, listOpenPairs(instance, closeRelations(instance)), new Random(2));
  const spanOf = (): number => Math.max(...start.map((at, i) => at + instance.durations[i]!));
  const seen = new Hash();
  const spans = [spanOf()];
  let drifts = 0;
  for (let k = 0; k < turns; k++) {
    const span = spanOf();
    if (k % 3 === 2 && neighbourhood.drift(start, span)) drifts++;
    seen.addRow(start);
    if (neighbourhood.improve(start, span, span, 40)) spans.push(spanOf());
    seen.addRow(start).add(neighbourhood.work);
  }
  return { work: neighbourhood.work, drifts, spans: spans.join(' '), seen: String(seen) };
}

const byShare = (work: number): Partial<CoreOptions> => ({ stop: (progress) => progress.work > work, share: (progress) => progress.work / work });

/** Each file of recordings, by the part of the engine it holds; what takes longest comes last. */
export const recordings: Readonly<Record<string, Readonly<Record<string, () => Recording>>>> = {
  network: Object.fromEntries(['j301_1', 'ubo20_psp5', 'ubo20_psp17', 'j30_psp9', 'tight', 'slow', 'windows', 'wide windows', 'no way', 'sessions', 'short sessions', 'windows in sessions'].map((name) => [name, () => recordNetwork(name)])),
  lists: {
    ...Object.fromEntries(['j301_1', 'tight', 'slow', 'loose', 'sessions', 'short sessions'].map((name) => [`${name} from both sides`, () => recordSerial(name, 40)])),
    ...Object.fromEntries(['j301_1', 'tight', 'slow', 'loose', 'sessions'].map((name) => [`${name} bred`, () => recordGenetic(name, 300)])),
    ...Object.fromEntries(['j3013_1', 'j305_1', 'tight', 'slow', 'windows', 'wide windows', 'sessions', 'windows in sessions'].map((name) => [`${name} by neighbourhoods`, () => recordNeighbourhood(name, 24)])),
  },
  engine: {
    ...Object.fromEntries(['j305_1', 'j3013_1', 'tight', 'slow', 'windows', 'sessions', 'windows in sessions', 'ubo20_psp17', 'j30_psp9']
      .map((name) => [`${name} by activity`, () => recordEngine(name, 300, 'activity')])),
    ...Object.fromEntries(['j3045_1', 'middle', 'wide windows', 'sessions'].map((name) => [`${name} by turns`, () => recordEngine(name, 300, 'alternate')])),
    ...Object.fromEntries(['j305_1', 'windows', 'slow'].map((name) => [`${name} by the earliest start`, () => recordEngine(name, 200, 'earliest')])),
    'j3013_1 thinned out': () => recordThinned('j3013_1', 57, 5),
    'j3029_1 without windows': () => recordEngine('j3029_1', 600, 'activity', false),
    ...Object.fromEntries(([['j3013_1', 55], ['j30_psp9', 114], ['tight', 40], ['windows', 47], ['slow', 535], ['windows in sessions', 47]] as const).map(([name, first]) => [`${name} from below`, () => recordAssumption(name, first, 80)])),
  },
  solve: {
    ...Object.fromEntries(['j301_1', 'j305_1', 'tight', 'slow', 'loose', 'windows', 'wide windows', 'no way', 'sessions', 'short sessions', 'windows in sessions', 'ubo20_psp5', 'ubo20_psp17', 'j30_psp15', 'ubo50_psp25']
      .map((name) => [name, () => recordSolve(name, 150_000)])),
    'j3029_1 in turns': () => recordSolve('j3029_1', 260_000),
    'j605_1 without end': () => recordSolve('j605_1', 300_000),
    'j6037_1 with a share': () => recordSolve('j6037_1', 400_000, byShare(400_000)),
    'middle with a share': () => recordSolve('middle', 300_000, byShare(300_000)),
    'large with a share': () => recordSolve('large', 700_000, byShare(700_000)),
    'large without a share': () => recordSolve('large', 400_000),
    'tight from a plan': () => {
      const { durations } = find('tight');
      return recordSolve('tight', 150_000, { known: durations.map((_, i) => durations.slice(0, i).reduce((sum, d) => sum + d, 0)) });
    },
    'tight with another seed': () => recordSolve('tight', 150_000, { seed: -9 }),
    'ubo50_psp25 with another seed': () => recordSolve('ubo50_psp25', 150_000, { seed: 77 }),
    'j3013_1 to the end': () => recordSolve('j3013_1', 2_000_000),
  },
};
