/**
 * The core problem: activities in one go with whole durations, renewable resources, and
 * start-to-start relations s_to >= g(s_from) with g non-decreasing. Plain published classes are
 * the case g(v) = v + lag. Times are integers of any unit.
 */

/** From `from` on, g(v) = value + slope * (v - from), up to the next piece. */
export interface Piece {
  readonly from: number;
  readonly value: number;
  readonly slope: 0 | 1;
}

/** s_to >= s_from + lag; a negative lag from a successor back is a maximum time lag. */
export interface LagRelation {
  readonly from: number;
  readonly to: number;
  readonly lag: number;
}

/**
 * s_to >= g(s_from). Pieces are sorted by `from`, the first starts at or before 0, and g never decreases
 * from piece to piece: a later start never makes anything ready earlier.
 */
export interface CurveRelation {
  readonly from: number;
  readonly to: number;
  readonly pieces: readonly Piece[];
}

export type Relation = LagRelation | CurveRelation;

/** Both ends belong to the range. */
export interface StartRange {
  readonly first: number;
  readonly last: number;
}

export interface CoreInstance {
  /** Whole numbers >= 0. */
  readonly durations: readonly number[];
  /** Units of each renewable resource. */
  readonly capacities: readonly number[];
  /** `demands[activity][resource]`, held from start to end. */
  readonly demands: readonly (readonly number[])[];
  readonly relations: readonly Relation[];
  /** Where an activity may start: sorted disjoint ranges; null or absent is anywhere from 0 on. */
  readonly allowedStarts?: readonly (readonly StartRange[] | null)[];
  /** No activity ends after this. */
  readonly horizon: number;
}

/** True when the relation is s_to >= s_from + lag. */
export function isLag(relation: Relation): relation is LagRelation {
  return 'lag' in relation;
}

/** g(v) of a relation. */
export function followRelation(relation: Relation, v: number): number {
  return isLag(relation) ? v + relation.lag : evaluateCurve(relation.pieces, v);
}

/** g(v); before the first piece g is as at its start. */
export function evaluateCurve(pieces: readonly Piece[], v: number): number {
  let low = 0;
  let high = pieces.length - 1;
  while (low < high) {
    const middle = (low + high + 1) >> 1;
    if (pieces[middle]!.from <= v) low = middle;
    else high = middle - 1;
  }
  const piece = pieces[low]!;
  return piece.value + (v > piece.from ? piece.slope * (v - piece.from) : 0);
}

/** The least v with g(v) >= w, within [floor, ceiling]; ceiling + 1 when there is none. */
export function leastReaching(pieces: readonly Piece[], w: number, floor: number, ceiling: number): number {
  let low = floor;
  let high = ceiling + 1;
  while (low < high) {
    const middle = Math.floor((low + high) / 2);
    if (evaluateCurve(pieces, middle) >= w) high = middle;
    else low = middle + 1;
  }
  return low;
}

/** The allowed starts as a curve: the next allowed start at or after v. Past the last range it leads out of the horizon. */
export function curveOfStarts(ranges: readonly StartRange[], horizon: number): Piece[] {
  const pieces: Piece[] = [];
  let next = Math.min(0, ranges[0]?.first ?? 0);
  for (const range of ranges) {
    if (range.first > next) pieces.push({ from: next, value: range.first, slope: 0 });
    pieces.push({ from: range.first, value: range.first, slope: 1 });
    next = range.last + 1;
  }
  pieces.push({ from: next, value: Math.max(horizon, next) + 1, slope: 0 });
  return pieces;
}

/** Finds what cannot be read as a core instance: a caller's bug, so it throws. */
export function assertInstance(instance: CoreInstance): void {
  const { durations, capacities, demands, relations } = instance;
  const n = durations.length;
  if (!isWhole(instance.horizon)) throw new Error(`The horizon ${instance.horizon} is not a whole number below 2^29.`);
  for (const c of capacities) if (!isWhole(c) || c < 0) throw new Error(`Capacity ${c} is not a whole number >= 0.`);
  if (demands.length !== n) throw new Error(`${n} durations but ${demands.length} rows of demands.`);
  for (let i = 0; i < n; i++) {
    if (!isWhole(durations[i]!) || durations[i]! < 0) throw new Error(`Duration of activity ${i} is ${durations[i]}.`);
    if (demands[i]!.length !== capacities.length) throw new Error(`Activity ${i} names ${demands[i]!.length} resources of ${capacities.length}.`);
    if (demands[i]!.some((r) => !isWhole(r) || r < 0)) throw new Error(`Demands of activity ${i} are ${demands[i]!.join(', ')}.`);
  }
  for (const relation of relations) {
    if (!(relation.from in durations) || !(relation.to in durations)) {
      throw new Error(`A relation leads from ${relation.from} to ${relation.to} among ${n} activities.`);
    }
    if (isLag(relation) ? !isWhole(relation.lag) : !isCurve(relation.pieces)) {
      throw new Error(`The relation from ${relation.from} to ${relation.to} is not a whole lag or a rising curve.`);
    }
  }
}

function isWhole(v: number): boolean {
  return Number.isInteger(v) && Math.abs(v) < 1 << 29;
}

function isCurve(pieces: readonly Piece[]): boolean {
  if (pieces.length === 0) return false;
  for (let k = 1; k < pieces.length; k++) {
    const before = pieces[k - 1]!;
    const piece = pieces[k]!;
    if (piece.from <= before.from) return false;
    if (piece.value < before.value + before.slope * (piece.from - 1 - before.from)) return false;
  }
  return true;
}
