/** The week's view, computed from a series and its accepted plan. */
import type { Episode, SeriesDocument } from '@/lib/build';
import {
  addDays, dateOf, endOfDay, formatDay, formatIsoWeek, formatLength, formatMoment, formatWorkLength, isoWeekOf, nextWeek, previousWeek, startOfDay, weekDates,
  type CivilDate, type IsoWeek,
} from '@/lib/calendar';
import type { ReadingRows } from '@/lib/cure';
import { findFallback, type EpisodeOutlook, type PlanBlock, type SavedPlan, type Span } from '@/lib/plan';
import { addMinutes, MINUTES_PER_DAY, MS_PER_MINUTE, type Instant } from '@/lib/units';
import { listFireConflicts } from './waits-heating';
import { buildAxis, clipSpan, positionOf, type Axis } from './week-axis';
import { isErrand, isWait, linkRecord, showBlock, showReasons } from './week-block';
import type {
  BlockView, DayColumn, DayNote, Deadline, FallbackItem, PlanStamp, StripRow, WaitingWork, WeekView,
} from './week-model';
import { showSession } from './week-sessions';
import { drawFrames, drawRows, drawTicks, ROAD_ROW } from './week-strip';
import { formatRange, formatWeekLabel } from './week-words';
import { breatheSound, listCoats } from './workshop-air';

/** Later work named on the page; the rest is counted. */
const MOST_LATER = 8;

/** Coats laid longer ago than this give off no more solvent. */
const DAYS_OF_COATS = 10;

/** What the week page is computed from. */
export interface WeekInput {
  readonly document: SeriesDocument;
  /** The accepted plan, null before the first. */
  readonly plan: SavedPlan | null;
  readonly now: Instant;
  readonly week: IsoWeek;
  /** Number of a draft that waits for a decision. */
  readonly draft: number | null;
  /** Rows of the loggers; left out: none. */
  readonly rows?: ReadingRows;
}

/** The plan's number and age, and whether the build has moved on since. */
export function stampPlan(plan: SavedPlan | null, document: SeriesDocument, draft: number | null): PlanStamp | null {
  if (plan === null) return null;
  return {
    number: plan.number,
    madeAt: formatMoment(plan.madeAt, document.series.zone),
    staleness: document.planChange > plan.basedOnChange ? 'The build has changed since this plan.' : null,
    draft,
  };
}

function describeOutlook(outlook: EpisodeOutlook | undefined, zone: string): { outlook: string; isLate: boolean } {
  if (!outlook) return { outlook: 'not in the plan', isLate: false };
  if (outlook.recordedBy === null) return { outlook: 'some of its work has no place in the plan', isLate: true };
  const by = `recorded ${formatMoment(outlook.recordedBy, zone)}`;
  return outlook.late > 0 ? { outlook: `${by}, ${formatLength(outlook.late)} late`, isLate: true } : { outlook: by, isLate: false };
}

function listDeadlines(date: CivilDate, document: SeriesDocument, plan: SavedPlan | null): Deadline[] {
  const { zone } = document.series;
  const link = (episode: Episode) => linkRecord('episode', episode.id, document.episodes);
  // Due at the end of a day is due on that day, not on the next.
  const shoots = (plan?.result.episodes ?? []).filter((one) => dateOf(addMinutes(one.shootDue, -1), zone) === date).flatMap((one): Deadline[] => {
    const episode = document.episodes.find((candidate) => candidate.id === one.episodeId);
    return episode ? [{ episode: link(episode), kind: 'shoot due', text: `${episode.name}: recording complete`, ...describeOutlook(one, zone) }] : [];
  });
  const releases = document.episodes.filter((episode) => episode.releaseDate === date).map((episode): Deadline => {
    const found = describeOutlook(plan?.result.episodes.find((one) => one.episodeId === episode.id), zone);
    const known = episode.status === 'planned' ? found : { outlook: episode.status, isLate: false };
    return { episode: link(episode), kind: 'release', text: `${episode.name}: release`, ...known };
  });
  return [...shoots, ...releases];
}

function describeClockChange(day: Span): string | null {
  const hours = (day.end - day.start) / MS_PER_MINUTE / 60;
  if (hours === 24) return null;
  return `Clocks ${hours < 24 ? 'go forward' : 'go back'}: this day has ${hours} hours.`;
}

function drawDays(dates: readonly CivilDate[], axis: Axis, input: WeekInput): DayColumn[] {
  const { zone } = input.document.series;
  return dates.map((date) => {
    const day = { start: startOfDay(date, zone), end: endOfDay(date, zone) };
    const [left, right] = [positionOf(axis, day.start), positionOf(axis, day.end)];
    const scaled = axis.segments.filter((segment) => segment.isScaled && segment.start >= day.start && segment.end <= day.end);
    return {
      date,
      label: formatDay(date),
      weekday: formatDay(date).slice(0, 3),
      left,
      width: right - left,
      isToday: dateOf(input.now, zone) === date,
      isQuiet: scaled.length === 0,
      clockChange: describeClockChange(day),
      windows: scaled.map((segment) => ({
        start: segment.start,
        end: segment.end,
        left: segment.from / axis.width,
        width: (segment.to - segment.from) / axis.width,
        ticks: drawTicks(segment, axis, zone),
      })),
      deadlines: listDeadlines(date, input.document, input.plan),
    };
  });
}

/** Errands, and waits that begin or end on a day, for the day list of a narrow screen. */
function listNotes(dates: readonly CivilDate[], blocks: readonly PlanBlock[], zone: string): Record<CivilDate, DayNote[]> {
  const notes: Record<CivilDate, DayNote[]> = Object.fromEntries(dates.map((date) => [date, []]));
  for (const block of blocks.toSorted((a, b) => a.start - b.start)) {
    const note = (at: Instant, text: string) => notes[dateOf(at, zone)]?.push({ blockId: block.id, kind: block.kind, text });
    if (isErrand(block.kind)) note(block.start, `${formatMoment(block.start, zone).slice(-5)} ${block.title}`);
    if (block.kind === 'away') note(block.start, `${block.title}: away until ${formatMoment(block.end, zone)}`);
    // One place tells it for all that share the air.
    if (block.kind === 'shut' && blocks.find(({ kind, subject }) => kind === 'shut' && subject.id === block.subject.id) === block) note(block.start, `${block.title}, stay out until ${formatMoment(block.end, zone)}`);
    if (block.kind === 'cure') note(block.end, `${block.title}: ready ${formatMoment(block.end, zone).slice(-5)}`);
  }
  return notes;
}

function listLater(plan: SavedPlan | null, week: Span, document: SeriesDocument): WaitingWork[] {
  const { zone } = document.series;
  const done = new Set(document.tasks.filter((task) => task.doneAt !== null).map((task) => task.id));
  return (plan?.result.blocks ?? [])
    .filter((block) => block.kind === 'task' && block.start >= week.end && !done.has(block.subject.id))
    .toSorted((a, b) => a.start - b.start)
    .map((block) => ({
      subject: linkRecord('task', block.subject.id, document.tasks),
      title: block.title,
      when: formatMoment(block.start, zone),
      reasons: showReasons(block.because.slice(0, 1), zone),
    }));
}

function listUnplaced(plan: SavedPlan | null, document: SeriesDocument): WaitingWork[] {
  return (plan?.result.unplaced ?? []).map((work) => ({
    subject: linkRecord(work.subject.kind, work.subject.id, work.subject.kind === 'task' ? document.tasks : document.outsideJobs),
    title: work.title,
    when: null,
    reasons: showReasons(work.because, document.series.zone),
  }));
}

/** Work for one session that nothing outside the workshop can stop and that the week does not hold already. */
function listFallback(document: SeriesDocument, inWeek: readonly PlanBlock[]): FallbackItem[] {
  const held = new Set(inWeek.filter((block) => block.subject.kind === 'task').map((block) => block.subject.id));
  return findFallback(document, held).map((task) => ({
    taskId: task.taskId,
    title: task.title,
    length: formatWorkLength(task.minutes),
    place: document.places.find((place) => place.id === task.placeId)?.name ?? null,
    isFilmed: task.isFilmed,
  }));
}

const countStrays = (rows: readonly StripRow[]): number =>
  new Set(rows.filter((row) => row.id !== ROAD_ROW).flatMap((row) => row.pieces).filter((piece) => piece.sessionId === null).map((piece) => piece.blockId)).size;

function spanOfWeek(dates: readonly CivilDate[], zone: string): Span {
  const [monday, sunday] = [dates[0], dates[6]];
  if (monday === undefined || sunday === undefined) throw new Error('A week has seven dates.');
  return { start: startOfDay(monday, zone), end: endOfDay(sunday, zone) };
}

/** Sessions offered to move work to: about two months of them. */
const MOST_TARGETS = 40;

function listMoveTargets({ series, sessions }: SeriesDocument, now: Instant): WeekView['moveTo'] {
  return sessions
    .filter((session) => session.end > now)
    .toSorted((a, b) => a.start - b.start)
    .slice(0, MOST_TARGETS)
    .map((session) => ({ id: session.id, label: `${formatRange(session.start, session.end, series.zone)} ${session.name}` }));
}

/**
 * Everything the week page shows. Longer than most functions: it is the list of what stands on the page.
 * Pure; without a plan the sessions and deadlines are still there.
 */
export function computeWeek(input: WeekInput): WeekView {
  const { document, plan, now } = input;
  const { zone } = document.series;
  const dates = weekDates(input.week);
  const week = spanOfWeek(dates, zone);
  const blocks = plan?.result.blocks ?? [];
  const inWeek = blocks.filter((block) => (isWait(block.kind) ? clipSpan(block, week) : block.pieces.some((piece) => clipSpan(piece, week))));
  const sessions = document.sessions.filter((session) => session.start >= week.start && session.start < week.end).toSorted((a, b) => a.start - b.start);
  const worked = inWeek.filter((block) => !isWait(block.kind)).flatMap((block) => block.pieces);
  const days = dates.map((date) => ({ start: startOfDay(date, zone), end: endOfDay(date, zone) }));
  const axis = buildAxis(days, [...sessions, ...worked].flatMap((span) => clipSpan(span, week) ?? []));
  const rows = drawRows({ document, blocks: inWeek, week, axis });
  const later = listLater(plan, week, document);
  const air = breatheSound(document, { from: addDays(dates[0] ?? '', -DAYS_OF_COATS), to: dates.at(-1) ?? '' }, input.rows);
  const shown = new Set(rows.map((row) => row.id));
  return {
    seriesId: document.series.id,
    seriesName: document.series.name,
    week: formatIsoWeek(input.week),
    label: formatWeekLabel(dates[0] ?? ''),
    previousWeek: formatIsoWeek(previousWeek(input.week)),
    nextWeek: formatIsoWeek(nextWeek(input.week)),
    currentWeek: formatIsoWeek(isoWeekOf(dateOf(now, zone))),
    zone,
    plan: stampPlan(plan, document, input.draft),
    units: axis.width,
    days: drawDays(dates, axis, input),
    rows,
    frames: drawFrames(sessions, axis, zone),
    nowAt: now >= week.start && now < week.end ? positionOf(axis, now) : null,
    blocks: Object.fromEntries(inWeek.map((block): [string, BlockView] => [block.id, showBlock(block, document)])),
    sessions: sessions.map((session) => showSession(session, { blocks, document, now, air })),
    notes: listNotes(dates, inWeek, zone),
    closedPlaces: document.places.filter((place) => !shown.has(place.id)).map((place) => place.name),
    unplaced: listUnplaced(plan, document),
    later: later.slice(0, MOST_LATER),
    laterCount: later.length,
    fallback: listFallback(document, inWeek),
    moveTo: listMoveTargets(document, now),
    conflicts: listFireConflicts(document, listCoats(document, plan, air).filter(({ laidAt }) => laidAt < week.end && laidAt >= addMinutes(week.start, -DAYS_OF_COATS * MINUTES_PER_DAY)), week),
    strayCount: countStrays(rows),
  };
}
