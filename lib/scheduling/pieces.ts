import { FAR, type CalendarIndex } from './calendar-index';

/** Split work: its worked minutes, and the least length of each of its pieces (at most the duration). */
interface Work {
  readonly duration: number;
  readonly shortest: number;
}

/**
 * Length of the last piece when `left` minutes remain at the start of interval `k`; -1: the calendar runs out.
 * No interval is shorter than a piece may be.
 */
function lastPiece(calendar: CalendarIndex, k: number, left: number): number {
  let rest = left;
  for (let at = k; at < calendar.count; at += 1) {
    const length = calendar.end[at]! - calendar.start[at]!;
    if (rest <= length) return rest;
    rest -= length;
  }
  return -1;
}

/** Earliest start at or after `t` that makes no piece too short; `from` is the first interval that ends after `t`. FAR: none. */
export function alignPieces(calendar: CalendarIndex, { duration, shortest }: Work, t: number, from: number): number {
  for (let k = from; k < calendar.count; k += 1) {
    const start = Math.max(t, calendar.start[k]!);
    const first = calendar.end[k]! - start;
    if (first >= duration) return start;
    if (first < shortest) continue;
    const last = lastPiece(calendar, k + 1, duration - first);
    if (last < 0) return FAR;
    if (last >= shortest) return start;
    // Each minute later lengthens the last piece by one and shortens the first by one.
    const shift = shortest - last;
    if (first - shift >= shortest) return start + shift;
  }
  return FAR;
}

/** Latest start at or before `t` that makes no piece too short; -1: none. */
export function alignPiecesBack(calendar: CalendarIndex, { duration, shortest }: Work, t: number): number {
  for (let k = calendar.lastStartingBy(t); k >= 0; k -= 1) {
    const start = Math.min(t, calendar.end[k]! - shortest);
    if (start < calendar.start[k]!) continue;
    const first = calendar.end[k]! - start;
    if (first >= duration) return start;
    const last = lastPiece(calendar, k + 1, duration - first);
    if (last >= shortest) return start;
    // Earlier by the scrap, the work ends with the interval before; or with the calendar, where that runs out.
    const shift = last >= 0 ? last : duration - (calendar.total - calendar.before[k]! - (start - calendar.start[k]!));
    if (start - shift >= calendar.start[k]!) return start - shift;
  }
  return -1;
}
