/** Solvent in the air and something that glows or burns, in the same hours: a hazard, whatever the plan gains by it. */
import { intersectIntervals, mergeOverlapping, type InstantInterval } from '@/lib/calendar';
import type { Heater, HeatingRun } from '@/lib/climate';
import type { Instant } from '@/lib/units';

/** A coat that gives off solvent in one air zone. */
export interface SolventSpan {
  readonly name: string;
  readonly airZone: string;
  /** From opening the tin. */
  readonly start: Instant;
  /** Touch dry and the room aired. */
  readonly end: Instant;
}

export interface IgnitionConflict {
  readonly name: string;
  readonly heaterKind: Heater['kind'];
  readonly overlap: InstantInterval;
}

/**
 * Hours in which a burner or an unprotected heater runs in the air of a solvent coat. A flued burner still draws its flame's air
 * from somewhere, so only `isIgnitionSafe` clears a heater. After 29 CFR 1910.107(c): no space heaters in a spraying area.
 */
export function findIgnitionConflicts(
  heater: Heater, runs: readonly HeatingRun[], airZone: string, solvents: readonly SolventSpan[],
): IgnitionConflict[] {
  if (heater.isIgnitionSafe) return [];
  const on = mergeOverlapping(runs.map(({ start, end }) => ({ start, end })));
  return solvents
    .filter((span) => span.airZone === airZone && span.start < span.end)
    .flatMap((span) => intersectIntervals(on, [{ start: span.start, end: span.end }]).map((overlap) => ({ name: span.name, heaterKind: heater.kind, overlap })));
}
