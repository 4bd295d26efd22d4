/** What a person calls the things the engine knows by name. */
import { joinWords } from '@/lib/build';
import type { Draft } from '../compile/draft';
import { readName } from '../compile/names';

/** Title of an activity: `Strip the forks`, `Before-shots: Cut out the floor`, `Drop off: Chassis to be galvanized`. */
export function activityTitle(draft: Draft, activity: string): string {
  const { kind, id } = readName(activity);
  switch (kind) {
    case 'task':
      return draft.tasks.get(id)?.name ?? id;
    case 'before-shot':
      return `Before-shots: ${draft.tasks.get(id)?.name ?? id}`;
    case 'late-work':
      return draft.lateWork.get(id)?.task.name ?? id;
    case 'drop-off':
      return `Drop off: ${draft.jobs.get(id)?.name ?? id}`;
    case 'collection':
      return `Collect: ${draft.jobs.get(id)?.name ?? id}`;
    default:
      return draft.document.episodes.find((episode) => episode.id === id)?.name ?? id;
  }
}

/** Up to three titles, then how many more. */
export function joinTitles(draft: Draft, activities: readonly string[]): string {
  const titles = activities.slice(0, 3).map((activity) => `“${activityTitle(draft, activity)}”`);
  const more = activities.length - titles.length;
  return titles.join(', ') + (more > 0 ? ` and ${more} more` : '');
}

/** What a resource is called, and what it is. */
export function resourceTitle(draft: Draft, resource: string): { readonly kind: string; readonly name: string } {
  const { kind, id } = readName(resource);
  const { document } = draft;
  const records = { person: document.people, errand: document.people, place: document.places, part: document.parts, equipment: document.equipment }[kind] ?? [];
  return { kind, name: records.find((record) => record.id === id)?.name ?? id };
}

/** Names of the people behind crew resources: `Ann, Ben or Cal`. */
export function poolNames(draft: Draft, pool: readonly string[], joint: 'and' | 'or'): string {
  return joinWords(pool.map((resource) => resourceTitle(draft, resource).name), joint);
}
