import { issue, type Issue } from '@/lib/result';
import { deriveOrder, findCycle, type Precedence } from '../derive-order';
import type { PartUse, Part, SeriesDocument, Shot, ShownState, Task, WorkRef } from '../model';
import { findRecord } from '../records';
import { listShotsAhead, statesForShot, statesOf, workThatLeft, type ShotAhead } from '../shot-states';
import { listNames, quoteName, stateName, subjectsOf } from '../words';
import { isDone, workKey } from '../works';
import type { Rule } from './rule';

interface Seen {
  readonly task: Task;
  readonly shot: Shot;
  readonly shown: ShownState;
  readonly part: Part;
  readonly path: Issue['path'];
}

const called = ({ task, shot }: Pick<Seen, 'task' | 'shot'>): string => `The shot ${quoteName(shot.name)} of the task ${quoteName(task.name)}`;

/** What the task's own work says of a shot of its part; null: nothing against it. */
function sayContradiction(use: PartUse, { shot, shown, part }: Seen): string | null {
  const allowed = statesForShot(use, shot.purpose);
  if (allowed === null) return shot.purpose === 'before' && shown.stateId === use.to ? 'and this work only brings it there' : null;
  if (allowed.includes(shown.stateId)) return null;
  return `and the work has it ${listNames(allowed.map((id) => stateName(part, id))).replaceAll(' and ', ' or ')} ${shot.purpose === 'before' ? 'before it starts' : shot.purpose === 'after' ? 'when it is done' : 'while it lasts'}`;
}

function checkShown(document: SeriesDocument, seen: Seen, isTwice: boolean): readonly Issue[] {
  const { task, shot, shown, part, path } = seen;
  const more = { path: [...path, 'stateId'], subjects: subjectsOf(task, part) };
  if (isTwice) return [issue('shot-part-twice', `${called(seen)} names the part ${quoteName(part.name)} twice.`, 'Keep one line; a second state is a second shot.', { ...more, path: [...path, 'partId'] })];
  if (!part.states.some(({ id }) => id === shown.stateId)) {
    return [issue('state-of-another-part', `${called(seen)} shows the part ${quoteName(part.name)} in a state that it does not have: ${quoteName(shown.stateId)}.`, `Choose one of its states: ${listNames(part.states.map(({ name }) => name))}.`, more)];
  }
  const base = `${called(seen)} shows the part ${quoteName(part.name)} ${quoteName(stateName(part, shown.stateId))}`;
  const use = task.parts.find((each) => each.partId === part.id);
  const against = use === undefined ? null : sayContradiction(use, seen);
  if (against !== null) return [issue('shot-state-contradicts-work', `${base}, ${against}.`, 'Choose another state or another purpose for the shot, or let another task film it.', more)];
  if (task.doneAt !== null || shot.filmedAt !== null) return [];
  const gone = workThatLeft(document, shown);
  if (gone === undefined || gone.record.id === task.id) return [];
  return [issue('shot-state-left', `${base}, and ${quoteName(gone.record.name)} has taken it out of that state already.`, 'Mark the shot as filmed, take it out, or tell it with a re-enactment that is labelled as one.', { ...more, severity: 'warn', subjects: subjectsOf(task, part, gone.record) })];
}

function checkTask(document: SeriesDocument, task: Task): readonly Issue[] {
  return task.shots.flatMap((shot, index) => statesOf(shot).flatMap((shown, place) => {
    const part = findRecord(document, 'part', shown.partId);
    if (part === undefined) return [];
    const isTwice = statesOf(shot).findIndex(({ partId }) => partId === shown.partId) < place;
    return checkShown(document, { task, shot, shown, part, path: ['shots', index, 'states', place] }, isTwice);
  }));
}

/** The shots ahead of a task, as work of their own in the order. */
const aheadOf = (task: Task): WorkRef => ({ kind: 'task', id: `${task.id} ahead` });

/** The order with shots ahead of their work as work of their own; only ever used to find a ring through them. */
function orderWithShots(document: SeriesDocument, ahead: readonly ShotAhead[]): readonly Precedence[] {
  const order = deriveOrder(document);
  const tasks = new Map(ahead.map(({ task }) => [`task:${task.id}`, task]));
  const opened = order.flatMap((arc) => {
    const task = tasks.get(workKey(arc.to));
    return task === undefined ? [] : [{ ...arc, to: aheadOf(task) }];
  });
  const shots = ahead.flatMap(({ task, shown, makers, takers }) => {
    const because = { kind: 'part-state', ...shown } as const;
    const own = aheadOf(task);
    return [
      { from: own, to: { kind: 'task', id: task.id } as const, because },
      ...makers.map(({ ref }) => ({ from: ref, to: own, because })),
      ...takers.filter(({ record }) => !isDone(record)).map(({ ref }) => ({ from: own, to: ref, because })),
    ];
  });
  return [...order, ...opened, ...shots];
}

/** A shot ahead of its work that would have to wait for that work, at however many removes. */
function checkAhead(document: SeriesDocument): readonly Issue[] {
  const ahead = listShotsAhead(document);
  if (ahead.length === 0 || findCycle(deriveOrder(document)) !== null) return [];
  // No ring with all of them in the order: none with one of them. Most series end here.
  if (findCycle(orderWithShots(document, ahead)) === null) return [];
  return ahead.flatMap((each) => {
    const { task, shot, shown } = each;
    const part = findRecord(document, 'part', shown.partId);
    if (part === undefined || findCycle(orderWithShots(document, [each])) === null) return [];
    return [issue('shot-state-never-there', `${called({ task, shot })} shows the part ${quoteName(part.name)} ${quoteName(stateName(part, shown.stateId))}, and by the order of the work it is not in that state before ${quoteName(task.name)} starts.`,
      'Choose another state for the shot, or let another task film it.', { path: ['shots', task.shots.indexOf(shot), 'states', statesOf(shot).indexOf(shown), 'stateId'], subjects: subjectsOf(task, part) })];
  });
}

/** What a shot shows can be there when it is taken: by the work it belongs to, and by the order of all work. */
export const checkShotStates: Rule = (document) => [...document.tasks.flatMap((task) => checkTask(document, task)), ...checkAhead(document)];
