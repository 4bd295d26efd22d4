/** What should be filmed once more, and when that is possible. */
import type { SeriesDocument } from '@/lib/build';
import { formatMoment } from '@/lib/calendar';
import { findPickups, nameOfState, runChecks } from '@/lib/continuity';
import { loadFacts } from './continuity-facts';
import type { ViewContext } from './context';
import { capitalise } from './week-words';

export interface PickupView {
  readonly key: string;
  /** With a capital: `A close picture of “Strip the frame”`. */
  readonly what: string;
  readonly why: string;
  readonly task: { readonly id: string; readonly name: string };
  /** `Frame stripped`. */
  readonly parts: readonly string[];
  readonly sessions: readonly { readonly id: string; readonly words: string }[];
  readonly moreSessions: number;
  readonly whyNone: string;
}

const MOST_SESSIONS = 4;

export async function viewPickups(context: ViewContext, document: SeriesDocument): Promise<readonly PickupView[]> {
  const facts = await loadFacts(context, document);
  return findPickups(facts, runChecks(facts)).map((pickup) => ({
    key: pickup.key, what: capitalise(pickup.what), why: pickup.why, task: { id: pickup.task.id, name: pickup.task.name }, whyNone: pickup.whyNone,
    parts: pickup.parts.map(({ partId, stateId }) => {
      const part = facts.parts.get(partId);
      return stateId === null ? `${part?.name ?? ''} here` : `${part?.name ?? ''} ${nameOfState(part, stateId)}`;
    }),
    sessions: pickup.sessions.slice(0, MOST_SESSIONS).map((session) => ({ id: session.id, words: `${session.name}, ${formatMoment(session.start, document.series.zone)}` })),
    moreSessions: Math.max(0, pickup.sessions.length - MOST_SESSIONS),
  }));
}
