/** Per-session cards: who, what is booked, what must be ready. */
import { attendanceOf, type SeriesDocument, type Session } from '@/lib/build';
import { dateOf, formatWorkLength } from '@/lib/calendar';
import type { PlanBlock, Span } from '@/lib/plan';
import { MS_PER_MINUTE, type Instant } from '@/lib/units';
import { isErrand, isWait, nameOf } from './week-block';
import type { SessionCard } from './week-model';
import { listReadyItems } from './week-ready';
import type { Air } from './workshop-air';
import { findSessionOf } from './week-strip';
import { formatClockRange, formatRange } from './week-words';

const lengthOf = (span: Span): number => (span.end - span.start) / MS_PER_MINUTE;

export interface SessionWork {
  readonly block: PlanBlock;
  readonly piece: Span;
}

/** Worked pieces inside a session, in the order they start. */
export function listSessionWork(session: Session, blocks: readonly PlanBlock[], sessions: readonly Session[]): SessionWork[] {
  return blocks
    .filter((block) => !isWait(block.kind) && !isErrand(block.kind))
    .flatMap((block) => block.pieces.map((piece) => ({ block, piece })))
    .filter(({ block, piece }) => findSessionOf(piece, block.placeId, sessions)?.id === session.id)
    .toSorted((a, b) => a.piece.start - b.piece.start || a.piece.end - b.piece.end);
}

function describeBooking(booked: number, available: number, fillLimit: number): string {
  const limit = Math.round(fillLimit * 100);
  if (available === 0) return 'Nobody is in.';
  return `${formatWorkLength(booked)} of ${formatWorkLength(available)} crew time booked (${Math.round((100 * booked) / available)} %, limit ${limit} %)`;
}

/** What a session is shown in. */
export interface Around {
  readonly blocks: readonly PlanBlock[];
  readonly document: SeriesDocument;
  readonly now: Instant;
  readonly air: Air;
}

/** A session with its work, its hours and what must be ready. */
export function showSession(session: Session, { blocks, document, now, air }: Around): SessionCard {
  const { zone, fillLimit } = document.series;
  const work = listSessionWork(session, blocks, document.sessions);
  const { away, present } = attendanceOf(document, session);
  const available = lengthOf(session) * present.length;
  const booked = work.reduce((sum, { block, piece }) => sum + lengthOf(piece) * block.crewIds.length, 0);
  return {
    id: session.id,
    name: session.name,
    date: dateOf(session.start, zone),
    when: formatRange(session.start, session.end, zone),
    crew: [...present.map(({ name }) => name), ...away.map(({ name }) => `${name} (away)`)],
    places: session.placeIds.map((id) => nameOf(id, document.places, 'place')),
    isRecording: session.isRecording,
    hasDaylight: session.hasDaylight,
    isNoiseAllowed: session.isNoiseAllowed,
    heating: session.heating === null ? null : `heated to ${session.heating} °C`,
    booked,
    available,
    limit: available * fillLimit,
    booking: describeBooking(booked, available, fillLimit),
    isOverfull: booked > available * fillLimit + 0.5,
    isPast: session.end <= now,
    work: work.map(({ block, piece }) => ({ blockId: block.id, time: formatClockRange(piece.start, piece.end, zone) })),
    ready: listReadyItems(session, work, { blocks, document, air }),
  };
}
