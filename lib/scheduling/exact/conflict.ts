import type { Model } from '../model';
import { factOfArc } from '../obstacles';
import type { Contradiction, Fact } from '../problem';
import { solveCore, type CoreInstance } from '../proof';
import type { Core } from './lower';

/** Work allowed to one question whether some facts contradict each other, and to all of them. */
const ONE_QUESTION = 400_000;
const ALL_QUESTIONS = 6_000_000;

/** Something that can be left out of an instance: a relation, or what one activity takes of one resource. */
type Part = { readonly arc: number } | { readonly activity: number; readonly resource: number };

/**
 * The facts behind an instance without dates that the core finds infeasible: lags and the use of resources of which,
 * as far as the work allowed tells, none can be spared; all that are left when the signal is given. Null when only the horizon
 * stands in the way.
 */
export function explainExactly(model: Model, core: Core, seed: number, signal?: { readonly aborted: boolean }): Contradiction | null {
  const wide: CoreInstance = { ...core.instance, horizon: Math.max(core.instance.horizon, widest(core.instance)) };
  const parts: Part[] = core.instance.relations.map((_, arc) => ({ arc }));
  core.instance.demands.forEach((row, activity) => {
    if (core.instance.durations[activity]! > 0) row.forEach((amount, resource) => amount > 0 && parts.push({ activity, resource }));
  });
  let spent = 0;
  const isContradictory = (kept: readonly Part[]): boolean => {
    if (spent > ALL_QUESTIONS || signal?.aborted === true) return false;
    const { status, work } = solveCore(keepParts(wide, kept), { seed, stop: (progress) => progress.makespan >= 0 || progress.work > ONE_QUESTION || signal?.aborted === true });
    spent += work;
    return status === 'infeasible';
  };
  if (!core.isHorizonWide && !isContradictory(parts)) return null;
  return describeParts(model, core.instance, spareParts(parts, isContradictory));
}

function widest({ durations, relations }: CoreInstance): number {
  const longest = durations.slice();
  for (const relation of relations) if ('lag' in relation) longest[relation.from] = Math.max(longest[relation.from]!, relation.lag);
  return longest.reduce((sum, length) => sum + length, 0);
}

/** Leaves out what is not needed, in halving runs. */
function spareParts(parts: readonly Part[], isContradictory: (kept: readonly Part[]) => boolean): readonly Part[] {
  let kept = parts;
  for (let run = Math.max(1, kept.length >> 1); ; run = Math.max(1, run >> 1)) {
    for (let k = 0; k < kept.length;) {
      const without = [...kept.slice(0, k), ...kept.slice(k + run)];
      if (isContradictory(without)) kept = without;
      else k += run;
    }
    if (run === 1) return kept;
  }
}

/** The activities that the kept parts speak of, with nothing else asked of them. */
function keepParts(instance: CoreInstance, kept: readonly Part[]): CoreInstance {
  const named = new Set<number>();
  for (const part of kept) {
    if ('activity' in part) named.add(part.activity);
    else named.add(instance.relations[part.arc]!.from).add(instance.relations[part.arc]!.to);
  }
  const list = [...named].toSorted((a, b) => a - b);
  const place = new Map(list.map((i, k) => [i, k]));
  const demands = list.map(() => instance.capacities.map(() => 0));
  for (const part of kept) if ('activity' in part) demands[place.get(part.activity)!]![part.resource] = instance.demands[part.activity]![part.resource]!;
  return {
    capacities: instance.capacities,
    horizon: instance.horizon,
    durations: list.map((i) => instance.durations[i]!),
    demands,
    relations: kept.flatMap((part) => {
      if ('activity' in part) return [];
      const relation = instance.relations[part.arc]!;
      return [{ ...relation, from: place.get(relation.from)!, to: place.get(relation.to)! }];
    }),
  };
}

function describeParts(model: Model, instance: CoreInstance, kept: readonly Part[]): Contradiction {
  const { problem } = model;
  const idOf = (i: number) => problem.activities[i]!.id;
  const facts: Fact[] = [];
  const users = new Map<number, number[]>();
  const named = new Set<number>();
  for (const part of kept) {
    if ('activity' in part) {
      users.set(part.resource, [...(users.get(part.resource) ?? []), part.activity]);
      named.add(part.activity);
    } else {
      facts.push(factOfArc(model, part.arc));
      named.add(instance.relations[part.arc]!.from).add(instance.relations[part.arc]!.to);
    }
  }
  for (const [resource, [first, ...others]] of users) {
    facts.push({ kind: 'resource', resource: problem.resources[resource]!.id, activity: idOf(first!), blockers: others.map(idOf) });
  }
  return { facts, activities: [...named].toSorted((a, b) => a - b).map(idOf) };
}
