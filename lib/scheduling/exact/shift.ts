import { followRelation, type CoreInstance } from '../proof';

/**
 * Moves every activity as early as the others let it, first starts first; nothing moves later. Relations only say
 * "not before", so what follows from an activity stays met when it moves to an earlier time.
 */
export function shiftEarlier(instance: CoreInstance, starts: ArrayLike<number>): Int32Array {
  const { durations } = instance;
  const settled = Int32Array.from(starts);
  const order = Array.from(durations, (_, i) => i).toSorted((a, b) => settled[a]! - settled[b]! || a - b);
  for (const i of order) {
    let earliest = 0;
    for (const relation of instance.relations) {
      if (relation.to === i && relation.from !== i) earliest = Math.max(earliest, followRelation(relation, settled[relation.from]!));
    }
    settled[i] = firstFit(instance, settled, i, earliest);
  }
  return settled;
}

/** The least allowed start from `earliest` to where i stands now at which its needs are free. Only ends of others open room. */
function firstFit(instance: CoreInstance, starts: Int32Array, i: number, earliest: number): number {
  const { durations } = instance;
  const now = starts[i]!;
  const moments = [earliest, ...(instance.allowedStarts?.[i] ?? []).map((range) => Math.max(range.first, earliest))];
  for (let j = 0; j < durations.length; j += 1) if (j !== i) moments.push(starts[j]! + durations[j]!);
  for (const t of moments.filter((at) => at >= earliest && at < now).toSorted((a, b) => a - b)) {
    if (isAllowed(instance, i, t) && isFree(instance, starts, i, t)) return t;
  }
  return now;
}

function isAllowed(instance: CoreInstance, i: number, t: number): boolean {
  const ranges = instance.allowedStarts?.[i];
  return !ranges || ranges.some((range) => range.first <= t && t <= range.last);
}

function isFree({ capacities, demands, durations }: CoreInstance, starts: Int32Array, i: number, t: number): boolean {
  const end = t + durations[i]!;
  if (end === t) return true;
  const near: number[] = [];
  for (let j = 0; j < durations.length; j += 1) if (j !== i && starts[j]! < end && starts[j]! + durations[j]! > t) near.push(j);
  const moments = [t, ...near.map((j) => starts[j]!).filter((at) => at > t)];
  return capacities.every((capacity, k) => demands[i]![k] === 0 || moments.every((at) => {
    let use = demands[i]![k]!;
    for (const j of near) if (starts[j]! <= at && at < starts[j]! + durations[j]!) use += demands[j]![k]!;
    return use <= capacity;
  }));
}
