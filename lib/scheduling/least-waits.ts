import { FAR } from './calendar-index';
import { ELAPSED, TABLE, type Model } from './model';

/** Least minutes that each arc puts between its two events, whatever the moment; maximum lags: -Infinity. Many arcs share a table. */
export function findLeastWaits({ arcs }: Model): Float64Array {
  const known = new Map<Int32Array, { readonly step: number; readonly least: number }>();
  const ofTable = (ready: Int32Array, step: number): number => {
    const found = known.get(ready);
    if (found?.step === step) return found.least;
    const least = ready.reduce((so, minute, k) => Math.min(so, minute - k * step), FAR);
    known.set(ready, { step, least });
    return least;
  };
  return Float64Array.from({ length: arcs.count }, (_, arc) => {
    const minutes = arcs.minutes[arc]!;
    if (arcs.isMax[arc] === 1) return -Infinity;
    if (arcs.kind[arc] === TABLE) return ofTable(arcs.tables[arc]!, minutes);
    return arcs.kind[arc] === ELAPSED ? minutes : Math.max(0, minutes);
  });
}

/** Least minutes from the end of an arc's first activity to the end of its second, given the least waits; calendars are left aside. */
export function findLeastLength(model: Model, waits: Float64Array, arc: number): number {
  const { arcs, duration } = model;
  // From the start of the first, its own duration lies before its end; only for work that is not split is that exact.
  const first = arcs.isFromEnd[arc] === 1 ? 0 : -longestSpan(model, arcs.from[arc]!);
  return first + waits[arc]! + (arcs.isToEnd[arc] === 1 ? 0 : duration[arcs.to[arc]!]!);
}

/** Most minutes from start to end; split work may pause as long as its calendar lasts. */
function longestSpan(model: Model, activity: number): number {
  const isWhole = model.isSplit[activity] === 0 || model.calendar[activity]! < 0 || model.duration[activity] === 0;
  return isWhole ? model.duration[activity]! : Infinity;
}
