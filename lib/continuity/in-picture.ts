/** Who can be recognised in which episode. */
import type { Episode, Person } from '@/lib/build';
import { releaseOrder } from './airing';
import type { Facts } from './facts';
import { once } from './once';

export interface Pictured {
  readonly person: Person;
  /** In the order of release. */
  readonly episodes: readonly Episode[];
}

/** The crew of filmed work that is planned, and everybody in a recording session while a take was made. */
export const listPictured = once((facts: Facts): readonly Pictured[] => {
  const { people, sessions, episodes } = facts.document;
  const seen = new Map<string, Set<string>>(people.map(({ id }) => [id, new Set()]));
  for (const { kind, subject, crewIds } of facts.blocks) {
    const task = kind === 'task' || kind === 'before-shot' ? facts.tasks.get(subject.id) : undefined;
    if (task?.episodeId == null || (kind === 'task' && task.coverage === 'none' && task.shots.length === 0)) continue;
    for (const id of crewIds) seen.get(id)?.add(task.episodeId);
  }
  const recording = sessions.filter(({ isRecording }) => isRecording).toSorted((a, b) => a.start - b.start);
  let next = 0;
  for (const { at, taskId, take } of facts.takes) {
    // Takes come by time, and sessions do not go back.
    while (next < recording.length - 1 && recording[next]!.end < at) next += 1;
    const session = recording[next];
    const episodeId = taskId === null ? null : (facts.tasks.get(taskId)?.episodeId ?? null);
    if (session === undefined || episodeId === null || take.verdict === 'no good' || at < session.start || at > session.end) continue;
    for (const id of session.crewIds) seen.get(id)?.add(episodeId);
  }
  return people.map((person) => ({ person, episodes: releaseOrder(episodes.filter(({ id }) => seen.get(person.id)?.has(id))) })).filter((one) => one.episodes.length > 0);
});
