import { followRelation } from '@/lib/scheduling/proof/instance';
import type { CoreInstance } from '@/lib/scheduling/proof';

/** What the starts break, read off the instance alone. */
export function listFaults(instance: CoreInstance, starts: readonly number[]): string[] {
  const { durations, demands, capacities, relations, allowedStarts, horizon } = instance;
  const faults: string[] = [];
  for (const r of relations) if (starts[r.to]! < followRelation(r, starts[r.from]!)) faults.push(`relation ${r.from} to ${r.to}`);
  starts.forEach((s, i) => {
    if (s < 0 || s + durations[i]! > horizon) faults.push(`activity ${i} at ${s}`);
    const ranges = allowedStarts?.[i];
    if (ranges && !ranges.some((range) => range.first <= s && s <= range.last)) faults.push(`start ${s} of ${i} is not allowed`);
  });
  capacities.forEach((capacity, k) => {
    for (let t = 0; t < horizon; t++) {
      let use = 0;
      starts.forEach((s, i) => (use += s <= t && t < s + durations[i]! ? demands[i]![k]! : 0));
      if (use > capacity) faults.push(`resource ${k} at ${t}`);
    }
  });
  return faults;
}

/** The least makespan by trying every start, -1 when nothing is feasible. For very small instances. */
export function findOptimum(instance: CoreInstance): number {
  const { durations, horizon } = instance;
  const n = durations.length;
  const starts = durations.map(() => 0);
  const partly = (upTo: number): boolean => listFaults(cut(instance, upTo), starts.slice(0, upTo)).length === 0;
  let best = -1;
  const place = (i: number): void => {
    if (i === n) {
      const end = Math.max(0, ...starts.map((s, a) => s + durations[a]!));
      if (best < 0 || end < best) best = end;
      return;
    }
    const last = (best < 0 ? horizon : best - 1) - durations[i]!;
    for (let s = 0; s <= last; s++) {
      starts[i] = s;
      if (partly(i + 1)) place(i + 1);
    }
  };
  place(0);
  return best;
}

/** Every plan. For very small instances. */
export function listPlans(instance: CoreInstance): number[][] {
  let plans: number[][] = [[]];
  instance.durations.forEach((duration, i) => {
    const shortened = cut(instance, i + 1);
    plans = plans.flatMap((plan) => Array.from({ length: Math.max(0, instance.horizon - duration + 1) }, (_, s) => [...plan, s])).filter((plan) => listFaults(shortened, plan).length === 0);
  });
  return plans;
}

/** The first activities alone. */
function cut(instance: CoreInstance, count: number): CoreInstance {
  return {
    ...instance,
    durations: instance.durations.slice(0, count),
    demands: instance.demands.slice(0, count),
    relations: instance.relations.filter((r) => r.from < count && r.to < count),
    ...(instance.allowedStarts ? { allowedStarts: instance.allowedStarts.slice(0, count) } : {}),
  };
}
