/** Budgets by account, and the doses that they count. */
import { find, flatten, numberOf, type Index } from './compile-rows';
import type { Budgets, Doses } from './model';
import type { Budget, Dose, Problem } from './problem';

interface Sourced {
  readonly budget: Budget;
  /** Index in `problem.budgets`. */
  readonly source: number;
}

/** One row a kind; those that no budget counts are left out. */
function mergeDoses(doses: readonly Dose[], kinds: Index): readonly Dose[] {
  const merged = new Map<string, number>();
  for (const { kind, perMinute } of doses) if (perMinute > 0 && kinds.has(kind)) merged.set(kind, perMinute + (merged.get(kind) ?? 0));
  return [...merged].map(([kind, perMinute]) => ({ kind, perMinute }));
}

function layBudgets(accounts: readonly (readonly Sourced[])[]): Budgets {
  const { from, flat } = flatten(accounts.map((own) => own.toSorted((a, b) => a.budget.within.start - b.budget.within.start || a.source - b.source)));
  const end = Int32Array.from(flat, ({ budget }) => budget.within.end);
  const reach = new Int32Array(flat.length);
  for (let account = 0; account < accounts.length; account += 1) {
    let largest = 0;
    for (let k = from[account]!; k < from[account + 1]!; k += 1) {
      largest = Math.max(largest, end[k]!);
      reach[k] = largest;
    }
  }
  return {
    from,
    end,
    reach,
    start: Int32Array.from(flat, ({ budget }) => budget.within.start),
    limit: Int32Array.from(flat, ({ budget }) => budget.limit),
    source: Int32Array.from(flat, ({ source }) => source),
  };
}

/** One account a resource, and behind those one for each resource and dose that has a budget. */
export function compileBudgets(problem: Problem, resources: Index): { readonly budgets: Budgets; readonly doses: Doses } {
  const rows = (problem.budgets ?? []).map((budget, source) => ({ budget, source }));
  const kinds = new Map<string, number>();
  for (const { budget } of rows) if (budget.dose !== undefined) numberOf(kinds, budget.dose);
  const account = new Int32Array(resources.size * kinds.size).fill(-1);
  const accounts: Sourced[][] = Array.from(resources, () => []);
  for (const row of rows) {
    const { dose, resource } = row.budget;
    const own = find(resources, resource);
    const cell = own * kinds.size + (dose === undefined ? 0 : find(kinds, dose));
    if (dose !== undefined && account[cell]! < 0) account[cell] = accounts.push([]) - 1;
    accounts[dose === undefined ? own : account[cell]!]!.push(row);
  }
  const { from, flat } = flatten(problem.activities.map(({ doses }) => mergeDoses(doses ?? [], kinds)));
  return {
    budgets: layBudgets(accounts),
    doses: {
      from, account, kindCount: kinds.size,
      kind: Int32Array.from(flat, ({ kind }) => find(kinds, kind)),
      perMinute: Int32Array.from(flat, ({ perMinute }) => perMinute),
    },
  };
}
