/** The states that parts must be in while a shot is taken. */
import type { PartUse, SeriesDocument, Shot, ShownState, Task } from './model';
import { isDone, listWorks, type Work } from './works';

/** The states a shot asks for itself. */
export function statesOf(shot: Shot): readonly ShownState[] {
  return shot.states ?? [];
}

/** The shot without a part. Nothing of the list stays when it was the only one. */
export function withoutPart(shot: Shot, partId: string): Shot {
  const { states, ...rest } = shot;
  const kept = statesOf(shot).filter((shown) => shown.partId !== partId);
  return states === undefined || kept.length === states.length ? shot : kept.length === 0 ? rest : { ...rest, states: kept };
}

/** A shot of how it was before a step that happens once: filmed ahead of the work, not in it. */
export function isFilmedAhead(task: Task, shot: Shot): boolean {
  return task.irreversible && shot.purpose === 'before';
}

/** States in which a task's own part may be while a shot of this purpose is taken; null: any. */
export function statesForShot(use: Pick<PartUse, 'from' | 'to'>, purpose: Shot['purpose']): readonly string[] | null {
  const last = use.to ?? use.from;
  const wanted = purpose === 'before' ? [use.from] : purpose === 'after' ? [last] : [use.from, last];
  const known = [...new Set(wanted.filter((state) => state !== null))];
  return use.from === null && purpose !== 'after' ? null : known.length === 0 ? null : known;
}

const isOpen = (task: Task, shot: Shot): boolean => task.doneAt === null && shot.filmedAt === null;

/** Other parts that an open task must find in a state, and leaves in it, since shots taken in the work show them. */
export function heldForShots(task: Task): readonly PartUse[] {
  const own = new Set(task.parts.map((use) => use.partId));
  const held = task.shots.filter((shot) => isOpen(task, shot) && !isFilmedAhead(task, shot)).flatMap(statesOf).filter((shown) => !own.has(shown.partId));
  return [...new Map(held.map(({ partId, stateId }) => [`${partId} ${stateId}`, { partId, from: stateId, to: null }])).values()];
}

/** A state that shots filmed ahead of a task show, apart from the states its own work starts from. */
export interface ShotAhead {
  readonly task: Task;
  readonly shot: Shot;
  readonly shown: ShownState;
  /** Work that brings the part into the state: the shot comes after it. */
  readonly makers: readonly Work[];
  /** Work that takes the part out of it: the shot comes before it. */
  readonly takers: readonly Work[];
}

/** What shots still to be filmed ahead of their work wait for, and what waits for them. */
export function listShotsAhead(document: SeriesDocument): readonly ShotAhead[] {
  const wanted = document.tasks.flatMap((task) => task.shots.filter((shot) => isOpen(task, shot) && isFilmedAhead(task, shot)).flatMap((shot) =>
    statesOf(shot).filter(({ partId, stateId }) => !task.parts.some((use) => use.partId === partId && use.from === stateId)).map((shown) => ({ task, shot, shown }))));
  if (wanted.length === 0) return [];
  const works = listWorks(document);
  return wanted.map((each) => {
    const uses = (end: 'from' | 'to') => works.filter(({ ref, parts }) => ref.id !== each.task.id
      && parts.some((use) => use.partId === each.shown.partId && use[end] === each.shown.stateId && use.to !== null));
    return { ...each, makers: uses('to'), takers: uses('from') };
  });
}

/** Work that has already taken a part out of a state a shot still asks for; undefined: none. */
export function workThatLeft(document: SeriesDocument, { partId, stateId }: ShownState): Work | undefined {
  return listWorks(document).find(({ record, parts }) => isDone(record) && parts.some((use) => use.partId === partId && use.from === stateId && use.to !== null));
}

/** What viewers see of the parts of a task: the states its shots name, else the state it leaves each part in. */
export function shownStates(task: Task): readonly ShownState[] {
  const named = task.shots.flatMap(statesOf);
  const parts = new Set(named.map(({ partId }) => partId));
  const own = task.parts.flatMap(({ partId, from, to }) => {
    const stateId = to ?? from;
    return stateId === null || parts.has(partId) ? [] : [{ partId, stateId }];
  });
  return [...new Map([...named, ...own].map((shown) => [`${shown.partId} ${shown.stateId}`, shown])).values()];
}
