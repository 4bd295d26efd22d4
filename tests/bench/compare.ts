/**
 * The engine beside two solvers of the npm registry on the same cases, each with a model of its own: the optimum or the proof
 * that there is no plan must be the same. HiGHS gets the length the engine found as its horizon, the published or the widest
 * one where the engine found no plan.
 */
import { solveByHighs } from './reference-highs';
import { solveByMinizinc, type ReferenceAnswer } from './reference-minizinc';
import type { PublishedCase } from './published';

/** What the engine answered. */
export interface OwnAnswer {
  readonly published: PublishedCase;
  readonly status: string;
  readonly makespan: number;
  readonly seconds: number;
}

interface Compared extends OwnAnswer {
  readonly minizinc: ReferenceAnswer;
  readonly highs: ReferenceAnswer;
}

const isDecided = ({ status }: { readonly status: string }): boolean => status === 'optimal' || status === 'infeasible';

function isSame(own: OwnAnswer, other: ReferenceAnswer): boolean {
  return !isDecided(own) || !isDecided(other) || (own.status === other.status && own.makespan === other.makespan);
}

/** How many times as long the other took, as the geometric mean over the cases that both decided. */
function ratioOf(rows: readonly Compared[], name: 'minizinc' | 'highs'): number | null {
  const both = rows.filter((row) => isDecided(row) && isDecided(row[name]));
  const logs = both.map((row) => Math.log(Math.max(row[name].seconds, 1e-4) / Math.max(row.seconds, 1e-4)));
  return both.length === 0 ? null : Number(Math.exp(logs.reduce((sum, log) => sum + log, 0) / both.length).toFixed(2));
}

/** Prints a line a case and a summary; answers whether all that was decided is equal. */
export async function compareAnswers(own: readonly OwnAnswer[], seconds: number, clock: () => number): Promise<boolean> {
  const rows: Compared[] = [];
  for (const answer of own) {
    const minizinc = await solveByMinizinc(answer.published, seconds, clock);
    const horizon = answer.makespan >= 0 ? answer.makespan : answer.published.ub ?? answer.published.dur.reduce((sum, length) => sum + length, 0);
    const highs = await solveByHighs(answer.published, horizon, seconds, clock);
    const row = { ...answer, minizinc, highs };
    rows.push(row);
    const isEqual = isSame(answer, minizinc) && isSame(answer, highs);
    console.log(JSON.stringify({ id: answer.published.id, own: [answer.status, answer.makespan, answer.seconds], minizinc, highs, isEqual }));
  }
  const decided = (name: 'minizinc' | 'highs'): number => rows.filter((row) => isDecided(row[name])).length;
  const isAllEqual = rows.every((row) => isSame(row, row.minizinc) && isSame(row, row.highs));
  console.log(JSON.stringify({
    compared: rows.length, isAllEqual, decidedByOwn: rows.filter(isDecided).length, decidedByMinizinc: decided('minizinc'), decidedByHighs: decided('highs'),
    minizincTimesAsLong: ratioOf(rows, 'minizinc'), highsTimesAsLong: ratioOf(rows, 'highs'),
  }));
  return isAllEqual;
}
