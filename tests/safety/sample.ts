/** The sample series with hazards stated, and a few ways to sign. */
import type { CutChecks, HazardFact, SeriesDocument, Statement, StatementAbout, Task, TaskHazards } from '@/lib/build';
import { NO_TASK_HAZARDS } from '@/lib/build';
import { unwrap } from '@/lib/result';
import { buildChecklist, signStatement, type ChecklistItem } from '@/lib/safety';
import { at, sampleSeries } from '../build/sample-series';

/** Captions read and flashes counted. */
export const CHECKED: CutChecks = { captions: { file: 'cut-2.vtt', readOn: '2026-12-01' }, flashes: { perSecond: 2, remedy: 'slower cuts', countedOn: '2026-12-01' } };

/** The sample with everybody's consent and its cuts checked. */
function recordedSeries(): SeriesDocument {
  const sample = sampleSeries();
  return {
    ...sample,
    people: sample.people.map((person) => ({ ...person, consent: { givenOn: '2026-11-01', until: null, where: 'blue folder' } })),
    episodes: sample.episodes.map((episode) => ({ ...episode, checks: CHECKED })),
  };
}

/** The sample with hazard facts on one task, shown in episode-1. */
export function withHazards(taskId: string, facts: readonly HazardFact[], more: Partial<Task> = {}, hazards: Partial<TaskHazards> = {}): SeriesDocument {
  return changeTask(recordedSeries(), taskId, { episodeId: 'episode-1', coverage: 'moved camera', hazards: { ...NO_TASK_HAZARDS, facts, ...hazards }, ...more });
}

export function changeTask(document: SeriesDocument, taskId: string, more: Partial<Task>): SeriesDocument {
  return { ...document, tasks: document.tasks.map((task) => (task.id === taskId ? { ...task, ...more } : task)) };
}

/** The task of that id. */
export function taskOf(document: SeriesDocument, id: string): Task {
  const found = document.tasks.find((task) => task.id === id);
  if (found === undefined) throw new Error(`No task ${id}`);
  return found;
}

/** The document with a statement signed by Robin. */
export function sign(document: SeriesDocument, about: StatementAbout, reason = 'looked at it together'): SeriesDocument {
  const draft = { id: `statement-${document.statements.length + 1}`, name: 'signed', about, personId: 'person-robin', at: at('2026-12-01', '20:00'), reason };
  const statement: Statement = unwrap(signStatement(document, draft));
  return { ...document, statements: [...document.statements, statement] };
}

export function itemOf(document: SeriesDocument, itemId: string): ChecklistItem {
  const found = buildChecklist(document, 'episode-1').items.find(({ id }) => id === itemId);
  if (found === undefined) throw new Error(`No line ${itemId}`);
  return found;
}

/** All work of episode-1 ticked off. */
function finishWork(document: SeriesDocument): SeriesDocument {
  return { ...document, tasks: document.tasks.map((task) => (task.episodeId === 'episode-1' ? { ...task, doneAt: at('2026-12-01', '18:00') } : task)) };
}

/** Every needed line of episode-1 signed with a take, its work done. */
export function signAll(recorded: SeriesDocument): SeriesDocument {
  const document = finishWork(recorded);
  return buildChecklist(document, 'episode-1').items.filter(({ isNeeded, state }) => isNeeded && state !== 'recorded').reduce((next, { id, fingerprint }) => sign(next, {
    sort: 'evidence', episodeId: 'episode-1', itemId: id, fingerprint, evidence: { kind: 'take', take: 'cam A 12', timecode: '00:12:04:11' },
  }), document);
}
