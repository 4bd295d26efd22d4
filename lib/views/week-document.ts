/**
 * The week as a JSON document for other programs. Keys are stable: a key may be added, none is renamed or
 * taken away within one `format`. Moments are ISO 8601 in UTC, lengths whole minutes, dates civil.
 */
import type { Instant } from '@/lib/units';
import { minutesBetween } from '@/lib/units';
import type { BlockView, SessionCard, WaitingWork, WeekView } from './week-model';

export const WEEK_FORMAT = 'benchtake.week/1';

const iso = (at: Instant): string => new Date(at).toISOString();

export interface WeekDocument {
  readonly format: typeof WEEK_FORMAT;
  readonly series: { readonly id: string; readonly name: string; readonly zone: string };
  /** ISO week, `2026-W49`. */
  readonly week: string;
  /** null: no plan has been accepted. */
  readonly plan: { readonly number: number; readonly outOfDate: boolean } | null;
  readonly sessions: readonly WeekSession[];
  /** Work, trips and waits that touch the week, in order of their start. */
  readonly blocks: readonly WeekBlock[];
  readonly deadlines: readonly { readonly episode: string; readonly kind: string; readonly text: string; readonly outlook: string; readonly late: boolean }[];
  readonly unplaced: readonly WeekWaiting[];
  readonly fallback: readonly { readonly taskId: string; readonly title: string; readonly length: string; readonly place: string | null }[];
}

export interface WeekSession {
  readonly id: string;
  readonly name: string;
  readonly date: string;
  readonly when: string;
  readonly crew: readonly string[];
  readonly places: readonly string[];
  readonly recording: boolean;
  readonly bookedPersonMinutes: number;
  readonly limitPersonMinutes: number;
  readonly availablePersonMinutes: number;
  readonly ready: readonly { readonly kind: string; readonly text: string; readonly atRisk: boolean }[];
}

export interface WeekBlock {
  readonly id: string;
  readonly kind: BlockView['kind'];
  readonly title: string;
  readonly start: string;
  readonly end: string;
  readonly elapsedMinutes: number;
  readonly crew: readonly string[];
  readonly place: string | null;
  readonly parts: readonly { readonly name: string; readonly from: string | null; readonly to: string | null }[];
  readonly episode: string | null;
  readonly because: readonly { readonly text: string; readonly change: string | null }[];
}

export interface WeekWaiting {
  readonly title: string;
  readonly because: readonly { readonly text: string; readonly change: string | null }[];
}

function toSession(card: SessionCard): WeekSession {
  const { id, name, date, when, crew, places, isRecording, booked, limit, available } = card;
  const ready = card.ready.map(({ kind, text, isAtRisk }) => ({ kind, text, atRisk: isAtRisk }));
  return { id, name, date, when, crew, places, recording: isRecording, bookedPersonMinutes: booked, limitPersonMinutes: limit, availablePersonMinutes: available, ready };
}

const toReasons = (reasons: BlockView['because']) => reasons.map(({ text, change }) => ({ text, change }));

function toBlock(block: BlockView): WeekBlock {
  const { id, kind, title, crew, place } = block;
  return {
    id, kind, title, start: iso(block.start), end: iso(block.end), elapsedMinutes: Math.round(minutesBetween(block.start, block.end)), crew, place,
    parts: block.parts.map(({ name, from, to }) => ({ name, from, to })),
    episode: block.episode?.name ?? null,
    because: toReasons(block.because),
  };
}

const toWaiting = (work: WaitingWork): WeekWaiting => ({ title: work.title, because: toReasons(work.reasons) });

/** The week page's data as the documented JSON. */
export function describeWeek(view: WeekView): WeekDocument {
  return {
    format: WEEK_FORMAT,
    series: { id: view.seriesId, name: view.seriesName, zone: view.zone },
    week: view.week,
    plan: view.plan && { number: view.plan.number, outOfDate: view.plan.staleness !== null },
    sessions: view.sessions.map(toSession),
    blocks: Object.values(view.blocks).toSorted((a, b) => a.start - b.start || (a.id < b.id ? -1 : 1)).map(toBlock),
    deadlines: view.days.flatMap((day) => day.deadlines).map(({ episode, kind, text, outlook, isLate }) => ({ episode: episode.name, kind, text, outlook, late: isLate })),
    unplaced: view.unplaced.map(toWaiting),
    fallback: view.fallback.map(({ taskId, title, length, place }) => ({ taskId, title, length, place })),
  };
}
