/** What a change does to the strip of a week: blocks at their old and their new place, in the look of the week. Pure. */
import type { SeriesDocument } from '@/lib/build';
import { dateOf, endOfDay, formatDay, isoWeekOf, formatIsoWeek, startOfDay, weekDates, type CivilDate } from '@/lib/calendar';
import type { PlanBlock, PlanResult, Span } from '@/lib/plan';
import { addMinutes, minutesBetween, type Instant } from '@/lib/units';
import { buildAxis, clipSpan, positionOf, type Axis } from './week-axis';
import { isWait } from './week-block';
import { assignLanes } from './week-lanes';
import type { DrawnFrame } from './week-model';
import { drawFrames, nameRow, rowOf } from './week-strip';
import { formatRange, formatWeekLabel } from './week-words';

/** Minutes of the axis that a block takes up at least. */
const LEAST_BOX = 90;

/** A block where it was or where it would be. Left and width are shares of the strip. */
export interface MovedPiece {
  readonly key: string;
  readonly title: string;
  /** `was`: in the plan that counts. `would`: after the change. */
  readonly look: 'was' | 'would';
  readonly left: number;
  readonly width: number;
  readonly lane: number;
  /** `Tue 1 Dec 18:30–20:10` */
  readonly when: string;
  /** Where the other half stands, when it is in another week or nowhere: `to Mon 14 Dec`, `new`, `gone`. */
  readonly other: string | null;
}

export interface MovedRow {
  readonly id: string;
  readonly name: string;
  readonly lanes: number;
  readonly pieces: readonly MovedPiece[];
}

export interface MovedStrip {
  readonly week: string;
  readonly label: string;
  readonly units: number;
  readonly days: readonly { readonly date: string; readonly label: string; readonly left: number; readonly width: number }[];
  readonly frames: readonly DrawnFrame[];
  readonly rows: readonly MovedRow[];
  /** Blocks that move in later weeks, which the words tell. */
  readonly laterCount: number;
}

interface Move {
  readonly id: string;
  readonly was: PlanBlock | null;
  readonly would: PlanBlock | null;
}

function listMoves(before: PlanResult, after: PlanResult): Move[] {
  const old = new Map(before.blocks.filter(({ kind }) => !isWait(kind)).map((block) => [block.id, block]));
  const next = new Map(after.blocks.filter(({ kind }) => !isWait(kind)).map((block) => [block.id, block]));
  return [...new Set([...old.keys(), ...next.keys()])].map((id) => ({ id, was: old.get(id) ?? null, would: next.get(id) ?? null }))
    .filter(({ was, would }) => was?.start !== would?.start || was?.placeId !== would?.placeId);
}

/** Where the other half of a move is, when it is not drawn beside it. */
function tellOther(other: PlanBlock | null, week: Span, look: MovedPiece['look'], zone: string): string | null {
  if (other === null) return look === 'was' ? 'gone' : 'new';
  if (other.pieces.some((piece) => clipSpan(piece, week))) return null;
  const day = formatDay(dateOf(other.start, zone));
  return look === 'was' ? `to ${day}` : `from ${day}`;
}

interface Drawing {
  readonly document: SeriesDocument;
  readonly week: Span;
  readonly axis: Axis;
}

function drawRow(id: string, moves: readonly Move[], { axis, document, week }: Drawing): MovedRow {
  const { zone } = document.series;
  const half = (block: PlanBlock | null, other: PlanBlock | null, look: MovedPiece['look']) => (block === null || rowOf(block, document) !== id ? [] : block.pieces.flatMap((piece) => {
    const span = clipSpan(piece, week);
    return span === null ? [] : [{ ...span, key: `${block.id} ${look} ${piece.start}`, title: block.title, look, when: formatRange(piece.start, piece.end, zone), other: tellOther(other, week, look, zone) }];
  }));
  // Short pieces are drawn wider than they are, and must not cover the next one.
  const drawn = moves.flatMap(({ was, would }) => [...half(was, would, 'was'), ...half(would, was, 'would')]).map((piece) => ({ ...piece, to: piece.end, end: addMinutes(piece.start, Math.max(LEAST_BOX, minutesBetween(piece.start, piece.end))) }));
  const { laid, lanes } = assignLanes(drawn);
  const pieces = laid.map(({ end: _end, start, to, ...piece }) => ({ ...piece, left: positionOf(axis, start), width: positionOf(axis, to) - positionOf(axis, start) }));
  return { id, name: nameRow(id, document), lanes, pieces };
}

/** The days of a week from the first on which something is worked to the last. */
function trimDates(dates: readonly CivilDate[], pieces: readonly Span[], zone: string): readonly CivilDate[] {
  const worked = new Set(pieces.map(({ start }) => dateOf(start, zone)));
  const [first, last] = [dates.findIndex((date) => worked.has(date)), dates.findLastIndex((date) => worked.has(date))];
  return first < 0 ? dates : dates.slice(first, last + 1);
}

/**
 * The first week in which work moves between two plans. Null: none does.
 * @param document the series after what happened, whose sessions are drawn
 */
export function drawMoves(document: SeriesDocument, before: PlanResult, after: PlanResult): MovedStrip | null {
  const moves = listMoves(before, after);
  const first = moves.reduce<Instant | null>((earliest, { was, would }) => [was, would].reduce<Instant | null>((least, block) => (block !== null && (least === null || block.start < least) ? block.start : least), earliest), null);
  if (first === null) return null;
  const { zone } = document.series;
  const isoWeek = isoWeekOf(dateOf(first, zone));
  const whole = weekDates(isoWeek);
  const dates = trimDates(whole, moves.flatMap(({ was, would }) => [...(was?.pieces ?? []), ...(would?.pieces ?? [])]), zone);
  const days = dates.map((date) => ({ start: startOfDay(date, zone), end: endOfDay(date, zone) }));
  const week = { start: days[0]!.start, end: days.at(-1)!.end };
  const isIn = (block: PlanBlock | null) => block !== null && block.pieces.some((piece) => clipSpan(piece, week));
  const shown = moves.filter(({ was, would }) => isIn(was) || isIn(would));
  const sessions = document.sessions.filter((session) => session.start >= week.start && session.start < week.end).toSorted((a, b) => a.start - b.start);
  const blocks = shown.flatMap(({ was, would }) => [was, would]).filter((block) => block !== null);
  const axis = buildAxis(days, [...sessions, ...blocks.flatMap(({ pieces }) => pieces)].flatMap((span) => clipSpan(span, week) ?? []));
  const ids = [...new Set(blocks.map((block) => rowOf(block, document)))];
  const inOrder = [...document.places.map(({ id }) => id).filter((id) => ids.includes(id)), ...ids.filter((id) => document.places.every((place) => place.id !== id))];
  return {
    week: formatIsoWeek(isoWeek), label: formatWeekLabel(whole[0] ?? ''), units: axis.width, frames: drawFrames(sessions, axis, zone),
    days: days.map(({ end, start }, k) => ({ date: dates[k]!, label: formatDay(dates[k]!), left: positionOf(axis, start), width: positionOf(axis, end) - positionOf(axis, start) })),
    rows: inOrder.map((id) => drawRow(id, shown, { document, week, axis })).filter(({ pieces }) => pieces.length > 0),
    laterCount: moves.length - shown.length,
  };
}
