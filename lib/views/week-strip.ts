/** Rows, pieces, bars and frames of the week strip. */
import { formatClock, formatMoment } from '@/lib/calendar';
import type { SeriesDocument, Session } from '@/lib/build';
import type { PlanBlock, Span } from '@/lib/plan';
import { addMinutes, MINUTES_PER_HOUR, MS_PER_MINUTE, type Instant } from '@/lib/units';
import { clipSpan, positionOf, type Axis } from './week-axis';
import { isErrand, isWait } from './week-block';
import { assignLanes } from './week-lanes';
import type { DrawnBar, DrawnFrame, DrawnPiece, StripRow } from './week-model';
import { formatClockRange, formatInitials } from './week-words';

/** A box is drawn at least this many scaled minutes wide, so that it can be hit and read. */
const LEAST_BOX = 36;

export const ROAD_ROW = 'road';
const AWAY_ROW = 'away';
const ELSEWHERE_ROW = 'elsewhere';

export interface StripInput {
  readonly document: SeriesDocument;
  readonly blocks: readonly PlanBlock[];
  readonly week: Span;
  readonly axis: Axis;
}

/** The session a worked piece lies in: whole, and with the place open where the block has one. */
export function findSessionOf(piece: Span, placeId: string | null, sessions: readonly Session[]): Session | null {
  const holding = sessions.filter((session) => session.start <= piece.start && piece.end <= session.end);
  return holding.find((session) => placeId === null || session.placeIds.includes(placeId)) ?? null;
}

/** The row a block is drawn in. A wait stands where its part is drying, or away. */
export function rowOf(block: PlanBlock, document: SeriesDocument): string {
  if (block.kind === 'away') return AWAY_ROW;
  if (isErrand(block.kind)) return ROAD_ROW;
  const known = (id: string | null) => (id !== null && document.places.some((place) => place.id === id) ? id : null);
  const task = document.tasks.find((one) => one.id === block.subject.id);
  return known(block.placeId) ?? known(task?.placeId ?? null) ?? ELSEWHERE_ROW;
}

/** The name of a row, by what {@link rowOf} says. */
export function nameRow(id: string, document: SeriesDocument): string {
  if (id === AWAY_ROW) return 'At outside trades';
  if (id === ROAD_ROW) return 'On the road';
  return document.places.find((place) => place.id === id)?.name ?? 'Place removed';
}

interface Box extends Span {
  readonly block: PlanBlock;
  readonly piece: Span;
  readonly session: Session | null;
}

/** A short piece widened to a box that can be read, pushed back inside its session. */
function widen(block: PlanBlock, piece: Span, document: SeriesDocument): Box {
  const session = isErrand(block.kind) ? null : findSessionOf(piece, block.placeId, document.sessions);
  const wished = addMinutes(piece.start, LEAST_BOX);
  const wide = wished > piece.end ? wished : piece.end;
  const end = session && wide > session.end ? session.end : wide;
  const earliest = session && session.start > addMinutes(end, -LEAST_BOX) ? session.start : addMinutes(end, -LEAST_BOX);
  return { start: earliest < piece.start ? earliest : piece.start, end, block, piece, session };
}

function drawPieces(blocks: readonly PlanBlock[], input: StripInput): { pieces: DrawnPiece[]; lanes: number } {
  const { document, axis, week } = input;
  const { zone } = document.series;
  const boxes = blocks.flatMap((block) => block.pieces.filter((piece) => clipSpan(piece, week)).map((piece) => widen(block, piece, document)));
  const { laid, lanes } = assignLanes(boxes);
  const pieces = laid.map(({ block, piece, session, start, end, lane }) => {
    const left = positionOf(axis, start);
    const width = positionOf(axis, end) - left;
    const [from, to] = [positionOf(axis, piece.start), positionOf(axis, piece.end)];
    return {
      blockId: block.id,
      key: `${block.id}@${piece.start}`,
      start: piece.start,
      end: piece.end,
      left,
      width,
      trueLeft: width > 0 ? (from - left) / width : 0,
      trueWidth: width > 0 ? (to - from) / width : 1,
      lane,
      time: formatClockRange(piece.start, piece.end, zone),
      sessionId: session?.id ?? null,
      crewInitials: block.crewIds.map((id) => formatInitials(document.people.find((one) => one.id === id)?.name ?? '?')).join(' '),
    };
  });
  return { pieces, lanes };
}

function drawBars(blocks: readonly PlanBlock[], input: StripInput): { bars: DrawnBar[]; waitLanes: number } {
  const { axis, week, document } = input;
  const shown = blocks.flatMap((block) => {
    const span = clipSpan(block, week);
    return span ? [{ ...span, block }] : [];
  });
  const { laid, lanes } = assignLanes(shown);
  const bars = laid.map(({ block, start, end, lane }) => ({
    blockId: block.id,
    start,
    end,
    left: positionOf(axis, start),
    width: positionOf(axis, end) - positionOf(axis, start),
    lane,
    startsBefore: block.start < week.start,
    endsAfter: block.end > week.end,
    until: `until ${formatMoment(block.end, document.series.zone)}`,
  }));
  return { bars, waitLanes: lanes };
}

function drawRow(id: string, kind: StripRow['kind'], name: string, input: StripInput): StripRow {
  const own = input.blocks.filter((block) => rowOf(block, input.document) === id);
  const work = drawPieces(own.filter((block) => !isWait(block.kind)), input);
  return { id, kind, name, ...work, ...drawBars(own.filter((block) => isWait(block.kind)), input) };
}

const isFilled = (row: StripRow): boolean => row.pieces.length > 0 || row.bars.length > 0;

/** Places in their order, then the road, the trades and whatever stands nowhere, each only if it has something to show. */
export function drawRows(input: StripInput): StripRow[] {
  const { document, week } = input;
  const opened = new Set(document.sessions.filter((session) => clipSpan(session, week)).flatMap((session) => session.placeIds));
  const places = document.places
    .map((place) => drawRow(place.id, 'place', place.name, input))
    .filter((row) => opened.has(row.id) || isFilled(row));
  const others = [
    drawRow(ELSEWHERE_ROW, 'elsewhere', nameRow(ELSEWHERE_ROW, document), input),
    drawRow(ROAD_ROW, 'road', nameRow(ROAD_ROW, document), input),
    drawRow(AWAY_ROW, 'away', nameRow(AWAY_ROW, document), input),
  ];
  return [...places, ...others.filter(isFilled)];
}

/** Sessions of the week as frames across the rows they open. */
export function drawFrames(sessions: readonly Session[], axis: Axis, zone: string): DrawnFrame[] {
  return sessions.map((session) => {
    const left = positionOf(axis, session.start);
    return {
      sessionId: session.id,
      left,
      width: positionOf(axis, session.end) - left,
      rowIds: session.placeIds,
      label: formatClockRange(session.start, session.end, zone),
    };
  });
}

/** Room a label needs, in units of the axis. */
const LABEL_UNITS = 44;

/** Labels under a stretch drawn to scale: its ends, and the full hours between that leave room. */
export function drawTicks(span: Span, axis: Axis, zone: string): { left: number; label: string }[] {
  const length = (span.end - span.start) / MS_PER_MINUTE;
  if (length < 2 * LABEL_UNITS) return [{ left: positionOf(axis, span.start), label: formatClock(span.start, zone) }];
  const step = length > 4 * MINUTES_PER_HOUR ? 2 * MINUTES_PER_HOUR : MINUTES_PER_HOUR;
  const pastHour = Number(formatClock(span.start, zone).slice(3));
  const moments: Instant[] = [];
  for (let at = addMinutes(span.start, pastHour === 0 ? 0 : MINUTES_PER_HOUR - pastHour); at < span.end; at = addMinutes(at, step)) {
    if (at - span.start >= 1.5 * LABEL_UNITS * MS_PER_MINUTE && span.end - at >= 1.5 * LABEL_UNITS * MS_PER_MINUTE) moments.push(at);
  }
  return [span.start, ...moments, span.end].map((at) => ({ left: positionOf(axis, at), label: formatClock(at, zone) }));
}
