/** What the checklist and the log say about one episode, in short. */
import type { Episode, SeriesDocument } from '@/lib/build';
import { dateOf } from '@/lib/calendar';
import { findPickups, listPromises, runChecks, type Facts } from '@/lib/continuity';
import { buildChecklist, judgeGate } from '@/lib/safety';
import type { ContinuitySummary, SafetySummary } from './episodes-model';
import { SEVERITY_WORDS, type loadScene } from './safety-words';
import { formatCount } from './week-words';

/** Blocks and findings that are told in full; the rest is a number. */
const MOST_TOLD = 3;

/** The accepted plan and the log, as the rules of safety see them. */
type SafetyScene = Pick<Awaited<ReturnType<typeof loadScene>>, 'work' | 'footage'>;

/** Lines of the checklist, hazards shown, what stands before the gate. */
export function summariseSafety(document: SeriesDocument, scene: SafetyScene, episode: Episode): SafetySummary {
  const checklist = buildChecklist(document, episode.id, scene);
  const { open } = judgeGate(document, checklist);
  const needed = checklist.items.filter(({ isNeeded }) => isNeeded);
  const signed = needed.filter(({ state }) => state === 'evidenced' || state === 'excepted').length;
  const again = needed.filter(({ state }) => state === 'reopened').length;
  return {
    isOpen: open.length > 0,
    words: `${formatCount(open.length, 'thing')} ${open.length === 1 ? 'stands' : 'stand'} between it and its release. ${signed} of ${formatCount(needed.length, 'line')} signed${again > 0 ? `, ${again} open again since something changed` : ''}.`,
    hazards: checklist.hazards.map(({ hazard, tasks }) => `${hazard.name} (${SEVERITY_WORDS[hazard.severity]}) in ${formatCount(tasks.length, 'task')}`),
    first: open.slice(0, MOST_TOLD).map(({ message, fix }) => ({ message, fix })),
    more: Math.max(0, open.length - MOST_TOLD),
  };
}

/** Checks, promises and pickups of one episode. */
export function summariseContinuity(facts: Facts, episode: Episode): ContinuitySummary {
  const { document, now } = facts;
  const findings = runChecks(facts);
  const own = findings.filter((finding) => finding.episodeId === episode.id);
  const standing = own.filter(({ waived }) => waived === null).toSorted((a, b) => Number(a.severity === 'warn') - Number(b.severity === 'warn') || a.check - b.check);
  const stops = standing.filter(({ severity }) => severity === 'stop').length;
  const passed = own.length - standing.length;
  return {
    stops, warns: standing.length - stops,
    words: `${formatCount(stops, 'check stops it', 'checks stop it')}, ${formatCount(standing.length - stops, 'check warns', 'checks warn')}${passed > 0 ? `, ${formatCount(passed, 'finding')} let pass with a reason` : ''}.`,
    first: standing.slice(0, MOST_TOLD),
    more: Math.max(0, standing.length - MOST_TOLD),
    promises: listPromises(document, dateOf(now, document.series.zone)).filter(({ promise, due, standing: how }) => how !== 'closed' && (promise.dueId ?? due?.id) === episode.id)
      .map(({ promise, standing: how }) => ({ id: promise.id, words: promise.name, standing: how === 'open' ? 'due by this episode' : how })),
    pickups: findPickups(facts, findings).filter(({ task }) => task.episodeId === episode.id).map(({ key, what, sessions, whyNone }) => ({
      key, words: `${what}: ${sessions.length > 0 ? `${formatCount(sessions.length, 'session')} would do` : whyNone}`,
    })),
  };
}
