/** Passes over the story, episode by episode, keeping a limited number of states after each. */
import { makeLeastRest } from './parallel-packing-bound';
import type { SearchProblem } from './parallel-packing-ends';
import { makePlaces } from './parallel-packing-places';
import { makeQueue } from './parallel-packing-queue';
import { makeListSteps, type TakeStep } from './parallel-packing-steps';

/** How far the story is told after an episode. */
export interface Stop {
  /** How many segments of each thread are told. */
  readonly told: readonly number[];
  /** Evergreens used, one bit each. */
  readonly used: number;
}

/** The start of the story, then the end of each episode. */
export interface Trail {
  readonly cost: number;
  readonly stops: readonly Stop[];
}

export interface Pass {
  /** The best that costs less than the ceiling. */
  readonly best: Trail | null;
  /** Nothing that was dropped can cost less than this; Infinity: nothing was dropped. */
  readonly droppedPromise: number;
  /** Episodes looked at. */
  readonly steps: number;
}

export interface PassLimits {
  /** States followed after each episode. */
  readonly width: number;
  /** What cannot cost less is not followed. */
  readonly ceiling: number;
  /** Episodes looked at in all, and after one state. */
  readonly steps: number;
  readonly stepsFromOne: number;
  /** Episodes that the steps are shared among. */
  readonly episodes: number;
}

/** The least that any packing costs, and a way to look for the cheapest. */
export interface Search {
  readonly leastCost: number;
  readonly pass: (limits: PassLimits) => Pass;
}

/**
 * Dynamic programming over the number of episodes: a state is a place in the story, reached at the least cost. Those that promise
 * least are followed; the smallest promise among the others bounds what was missed. What is known of a place serves every pass.
 */
export function makeSearch(problem: SearchProblem): Search {
  const columns = problem.threads.length + 2;
  const places = makePlaces(columns, makeLeastRest(problem));
  const listSteps = makeListSteps(problem);
  const start = places.find(new Int32Array(columns), 0);
  const ending = Int32Array.from(problem.threads, (thread) => thread.length);
  const from = new Int32Array(columns);
  const isEnd = (to: Int32Array): boolean => {
    for (let index = 0; index < ending.length; index += 1) if (to[index] !== ending[index]) return false;
    return true;
  };

  const retrace = (last: number, placeOf: readonly number[], befores: readonly number[]): readonly Stop[] => {
    const stops: Stop[] = [];
    for (let state = last; state >= 0; state = befores[state]!) {
      places.read(placeOf[state]!, from);
      stops.unshift({ told: [...from.subarray(0, ending.length)], used: from[ending.length]! });
    }
    return stops;
  };

  const pass = ({ width, ceiling, steps: most, stepsFromOne, episodes }: PassLimits): Pass => {
    const [placeOf, costs, befores]: [number[], number[], number[]] = [[start], [0], [-1]];
    const promiseOf = (state: number): number => costs[state]! + places.restOf(placeOf[state]!);
    let [cheapest, last, droppedPromise, steps] = [ceiling, -1, Infinity, 0];

    /** Follows the states reached with `count` episodes, the ones that promise least first; answers the states after them. */
    const follow = (layer: readonly number[], count: number): number[] => {
      const queue = makeQueue(layer, promiseOf);
      const until = steps + Math.ceil((most - steps) / Math.max(episodes - count, 1));
      const next: number[] = [];
      const stateAt = new Map<number, number>();
      let state = 0;
      const take: TakeStep = (to, stepCost) => {
        const cost = costs[state]! + stepCost;
        const place = places.find(to, 0);
        if (cost + places.restOf(place) >= cheapest) return;
        const known = stateAt.get(place);
        if (known !== undefined && costs[known]! <= cost) return;
        const at = known ?? costs.length;
        [placeOf[at], costs[at], befores[at]] = [place, cost, state];
        if (isEnd(to)) [cheapest, last] = [cost, at];
        else if (known === undefined) next.push(at);
        stateAt.set(place, at);
      };
      for (let taken = 0; ; taken += 1) {
        const found = queue.take();
        if (found === undefined || promiseOf(found) >= cheapest) return next;
        state = found;
        const allowed = Math.min(stepsFromOne, until - steps);
        if (taken >= width || allowed <= 0) {
          // The others promise no less.
          droppedPromise = Math.min(droppedPromise, promiseOf(state));
          return next;
        }
        places.read(placeOf[state]!, from);
        const seen = listSteps(from, count, allowed, take);
        if (seen > allowed) droppedPromise = Math.min(droppedPromise, promiseOf(state));
        steps += Math.min(seen, allowed);
      }
    };

    for (let [layer, count] = [[0], 0]; layer.length > 0; count += 1) layer = follow(layer, count);
    return { best: last < 0 ? null : { cost: cheapest, stops: retrace(last, placeOf, befores) }, droppedPromise, steps };
  };
  return { leastCost: places.restOf(start), pass };
}
