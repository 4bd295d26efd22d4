/** The now view, computed from a series, its accepted plan and the moment. */
import type { SeriesDocument, Session } from '@/lib/build';
import { dateOf, formatClock, formatIsoWeek, formatLength, formatMoment, formatWorkLength, isoWeekOf } from '@/lib/calendar';
import type { ReadingRows } from '@/lib/cure';
import type { PlanBlock, SavedPlan, Span } from '@/lib/plan';
import { minutesBetween, type Instant } from '@/lib/units';
import type { NowView, NowWork, Reminder } from './now-model';
import { listErrands, listFilmFirst, listHandsOff, listNotTicked, listRecoats, listSessionNeeds, listStayOut } from './now-reminders';
import { isErrand, showBlock } from './week-block';
import { stampPlan } from './week-plan';
import { countFilmedMinutes } from './week-ready';
import { listSessionWork, showSession, type SessionWork } from './week-sessions';
import { breatheSound, spanAround, type Air } from './workshop-air';
import { formatClockRange, formatCount, formatDistance, formatRange } from './week-words';

/** Days of climate around now: coats that may still be open behind, the next session ahead. */
const DAYS_BACK = 60;
const DAYS_AHEAD = 30;

/** Pieces named under Next. */
const MOST_NEXT = 4;

export interface NowInput {
  readonly document: SeriesDocument;
  readonly plan: SavedPlan | null;
  readonly now: Instant;
  readonly draft: number | null;
  /** Rows of the loggers; left out: none. */
  readonly rows?: ReadingRows;
}

/** The session that runs, else the next one. A session's last moment is no longer in it. */
function findSession(sessions: readonly Session[], now: Instant): Session | null {
  return sessions.filter((session) => session.end > now).toSorted((a, b) => a.start - b.start)[0] ?? null;
}

function describeFilming(work: readonly SessionWork[], document: SeriesDocument): string | null {
  const filmed = countFilmedMinutes(work, document);
  const before = work.filter(({ block }) => block.kind === 'before-shot').length;
  if (filmed === 0) return null;
  return `${formatWorkLength(filmed)} to be filmed${before > 0 ? `, ${formatCount(before, 'step')} to film before it is done` : ''}`;
}

function isTicked(block: PlanBlock, document: SeriesDocument): boolean {
  if (block.subject.kind === 'task') return document.tasks.find((one) => one.id === block.subject.id)?.doneAt !== null;
  const job = document.outsideJobs.find((one) => one.id === block.subject.id);
  return block.kind === 'drop-off' ? job?.droppedOffAt !== null : job?.collectedAt !== null;
}

/** The day is told only where it is neither today nor the day of the session above. */
function showWork({ block, piece }: SessionWork, input: NowInput, session: Session | null): NowWork {
  const { zone } = input.document.series;
  const date = dateOf(piece.start, zone);
  const isKnownDay = date === dateOf(input.now, zone) || (session !== null && date === dateOf(session.start, zone));
  return {
    block: showBlock(block, input.document),
    time: isKnownDay ? formatClockRange(piece.start, piece.end, zone) : formatRange(piece.start, piece.end, zone),
    phase: piece.end <= input.now ? 'open' : piece.start <= input.now ? 'now' : 'later',
  };
}

/** Trips on their way at the moment, drawn like work. */
function listRunningErrands(blocks: readonly PlanBlock[], now: Instant): SessionWork[] {
  const isOn = (piece: Span) => piece.start <= now && now < piece.end;
  return blocks.filter((block) => isErrand(block.kind)).flatMap((block) => block.pieces.filter(isOn).map((piece) => ({ block, piece })));
}

/** Reminders in the order of what can go wrong first. */
function listReminders(input: NowInput, blocks: readonly PlanBlock[], work: readonly SessionWork[], view: NowView['session'], air: Air): Reminder[] {
  const situation = { document: input.document, blocks, now: input.now };
  const running = new Set(listRunningErrands(blocks, input.now).map(({ block }) => block.id));
  const taskIds = work.filter(({ block }) => block.kind === 'task').map(({ block }) => block.subject.id);
  return [
    ...listStayOut(situation),
    ...listHandsOff(situation),
    ...listRecoats(situation, air),
    ...listFilmFirst(situation, taskIds),
    ...listErrands(situation).filter((one) => !running.has(one.key)),
    ...listNotTicked(situation, new Set(work.map(({ block }) => block.id))),
    ...(view ? listSessionNeeds(view) : []),
  ];
}

function listClocks({ timeLogs, tasks, series }: SeriesDocument, now: Instant): NowView['clocks'] {
  return timeLogs.filter((log) => log.end === null).map(({ id, revision, taskId, name, activity, start }) => ({
    id, revision, taskId, title: tasks.find((task) => task.id === taskId)?.name ?? name, activity,
    since: `since ${dateOf(start, series.zone) === dateOf(now, series.zone) ? formatClock(start, series.zone) : formatMoment(start, series.zone)}`,
  }));
}

/** Everything the now page shows at a moment. Pure. */
export function computeNow(input: NowInput): NowView {
  const { document, plan, now } = input;
  const { zone } = document.series;
  const blocks = plan?.result.blocks ?? [];
  const session = findSession(document.sessions, now);
  const isRunning = session !== null && session.start <= now;
  const work = session ? listSessionWork(session, blocks, document.sessions) : [];
  const open = [...listRunningErrands(blocks, now), ...work].filter(({ block }) => !isTicked(block, document)).map((one) => showWork(one, input, session));
  const air = breatheSound(document, spanAround(now, zone, DAYS_BACK, DAYS_AHEAD), input.rows);
  const card = session ? showSession(session, { blocks, document, now, air }) : null;
  return {
    seriesId: document.series.id,
    seriesName: document.series.name,
    clock: formatMoment(now, zone),
    currentWeek: formatIsoWeek(isoWeekOf(dateOf(now, zone))),
    plan: stampPlan(plan, document, input.draft),
    phase: session === null ? 'over' : isRunning ? 'running' : 'between',
    session: card,
    distance: session === null ? null : isRunning
      ? `until ${formatClock(session.end, zone)}, ${formatLength(minutesBetween(now, session.end))} left`
      : formatDistance(now, session.start),
    filming: describeFilming(work, document),
    now: open.filter((one) => one.phase !== 'later'),
    next: open.filter((one) => one.phase === 'later').slice(0, MOST_NEXT),
    clocks: listClocks(document, now),
    dontForget: listReminders(input, blocks, work, card, air),
  };
}
