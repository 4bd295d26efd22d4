import { CalendarIndex } from './calendar-index';
import { find, type Index } from './compile-rows';
import type { ObjectiveTerm, Problem } from './problem';

/** The order where the caller names none. */
const USUAL_ORDER: readonly ObjectiveTerm[] = ['tardiness', 'shortages', 'moved', 'makespan', 'cost'];

/** Terms in all: what is left out first, then the chosen order, then the sum of ends. */
export const TERMS = USUAL_ORDER.length + 2;

/** The objective in typed arrays. */
export interface Objective {
  /** Place of each term in a row of terms. */
  readonly rank: Readonly<Record<ObjectiveTerm, number>>;
  readonly quotas: {
    readonly count: number;
    readonly at: Int32Array;
    readonly least: Int32Array;
    readonly from: Int32Array;
    readonly among: Int32Array;
  };
  readonly upkeep: {
    readonly spans: CalendarIndex;
    readonly cost: Float64Array;
    /** 1 for the resources whose work is paid for. */
    readonly isCounted: Uint8Array;
    /** Room to mark the spans that are paid for. */
    readonly isPaid: Uint8Array;
  };
}

function rankTerms(order: readonly ObjectiveTerm[]): Objective['rank'] {
  const rank = (term: ObjectiveTerm) => 1 + order.indexOf(term);
  return { tardiness: rank('tardiness'), shortages: rank('shortages'), moved: rank('moved'), makespan: rank('makespan'), cost: rank('cost') };
}

/** Lowers what a valid problem says of its objective. @throws Error when an id is unknown. */
export function compileObjective(problem: Problem, activities: Index, resources: Index): Objective {
  const quotas = problem.quotas ?? [];
  const from = new Int32Array(quotas.length + 1);
  quotas.forEach((quota, k) => {
    from[k + 1] = from[k]! + quota.among.length;
  });
  const spans = problem.upkeep?.spans ?? [];
  const isCounted = new Uint8Array(problem.resources.length);
  for (const id of problem.upkeep?.resources ?? []) isCounted[find(resources, id)] = 1;
  return {
    rank: rankTerms(problem.objective ?? USUAL_ORDER),
    quotas: {
      count: quotas.length, from,
      at: Int32Array.from(quotas, ({ at }) => at),
      least: Int32Array.from(quotas, ({ least }) => least),
      among: Int32Array.from(quotas.flatMap(({ among }) => among), (id) => find(activities, id)),
    },
    upkeep: {
      spans: new CalendarIndex(spans.map(({ within }) => within)),
      cost: Float64Array.from(spans, ({ cost }) => cost),
      isCounted, isPaid: new Uint8Array(spans.length),
    },
  };
}
