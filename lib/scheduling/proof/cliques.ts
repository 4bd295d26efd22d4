import { listRivals } from './closure';
import type { Closure } from './closure';
import type { CoreInstance } from './instance';

/** Largest number of sets worth propagating. */
const MOST = 6;
/** A set is worth propagating when it fills so much of the shortest plan that is in sight. */
const FILLED = 0.5;

/**
 * Sets of activities of which no two ever run at the same time, by all resources and lags together: each can be
 * propagated as a resource of capacity 1. Heaviest first; light ones are left out.
 */
export function listCliques(instance: CoreInstance, closure: Closure | null): number[][] {
  const { durations } = instance;
  const n = durations.length;
  const least = FILLED * boundSpan(instance, closure);
  const isApart = markApart(instance, closure);
  const found: { readonly members: readonly number[]; readonly length: number }[] = [];
  for (let seed = 0; seed < n; seed++) {
    if (durations[seed] === 0) continue;
    const members = growClique(durations, isApart, seed);
    const length = members.reduce((sum, i) => sum + durations[i]!, 0);
    if (members.length < 3 || length < least) continue;
    if (!found.some((other) => other.members.length === members.length && other.members.every((i, k) => i === members[k]))) found.push({ members, length });
  }
  found.sort((a, b) => b.length - a.length);
  return found.slice(0, MOST).map(({ members }) => [...members]);
}

/** What any plan takes at least, by the longest path and by the work of each resource. */
function boundSpan({ capacities, demands, durations }: CoreInstance, closure: Closure | null): number {
  const work = capacities.map((capacity, k) => (capacity > 0 ? durations.reduce((sum, d, i) => sum + d * demands[i]![k]!, 0) / capacity : 0));
  let span = Math.max(0, ...durations, ...work);
  if (closure !== null) closure.distance.forEach((lag, at) => (span = Math.max(span, lag + durations[at % closure.n]!)));
  return span;
}

/** 1 at i * n + j where i and j never overlap. */
function markApart(instance: CoreInstance, closure: Closure | null): Uint8Array {
  const { durations } = instance;
  const n = durations.length;
  const isApart = new Uint8Array(n * n);
  const rivals = listRivals(instance);
  for (let p = 0; p < rivals.length; p += 2) {
    isApart[rivals[p]! * n + rivals[p + 1]!] = 1;
    isApart[rivals[p + 1]! * n + rivals[p]!] = 1;
  }
  if (closure === null) return isApart;
  for (let i = 0; i < n; i++) {
    for (let j = 0; j < n; j++) {
      if (i === j || closure.distance[i * n + j]! < durations[i]!) continue;
      isApart[i * n + j] = 1;
      isApart[j * n + i] = 1;
    }
  }
  return isApart;
}

/** A clique around a seed: each time the candidate that leaves most work among those still possible. */
function growClique(durations: readonly number[], isApart: Uint8Array, seed: number): number[] {
  const n = durations.length;
  const members = [seed];
  let open: number[] = [];
  for (let j = 0; j < n; j++) if (durations[j]! > 0 && isApart[seed * n + j] === 1) open.push(j);
  while (open.length > 0) {
    let best = -1;
    let bestLength = -1;
    for (const i of open) {
      let length = durations[i]!;
      for (const j of open) if (isApart[i * n + j] === 1) length += durations[j]!;
      if (length > bestLength) {
        best = i;
        bestLength = length;
      }
    }
    members.push(best);
    open = open.filter((j) => isApart[best * n + j] === 1);
  }
  return members.toSorted((a, b) => a - b);
}
