/** The lines of an episode's checklist, before signatures. Each hazard comes once an episode, however many tasks show it. */
import type { Departure, Task } from '@/lib/build';
import { issue, type Issue } from '@/lib/result';
import type { ItemDraft } from './checklist-item';
import type { Hazard } from './model';

/** A hazard that an episode shows, with the tasks that show it. */
export interface ShownHazard {
  readonly hazard: Hazard;
  readonly tasks: readonly Task[];
  /** Some of the tasks should be left to somebody else. */
  readonly isDeferred: boolean;
}

const idsOf = (tasks: readonly Task[]): readonly string[] => tasks.map(({ id }) => id);

/** Controls, cautions and the deferral of one hazard. */
export function linesOfHazard({ hazard, tasks, isDeferred }: ShownHazard): readonly ItemDraft[] {
  const common = { hazard, taskIds: idsOf(tasks), recorded: null, record: null, issues: [] };
  const controls = hazard.controls.map((control): ItemDraft => ({
    ...common, id: `control:${control.id}`, kind: 'control', text: control.text, isNeeded: control.isShown, basis: control,
  }));
  const deferral: readonly ItemDraft[] = isDeferred && hazard.deferral !== null
    ? [{ ...common, id: `deferral:${hazard.id}`, kind: 'deferral', isNeeded: true, basis: hazard.deferral, text: `Left to somebody licensed or equipped for it: ${hazard.deferral.text}` }]
    : [];
  return [
    ...deferral, ...controls,
    { ...common, id: `spoken:${hazard.id}`, kind: 'spoken', text: hazard.caution.spoken, isNeeded: true, basis: hazard.caution.spoken },
    { ...common, id: `caption:${hazard.id}`, kind: 'caption', text: hazard.caution.screen, isNeeded: true, basis: hazard.caution.screen },
  ];
}

/** What is worn, each thing once: eye protection for four hazards is one line. */
export function linesOfEquipment(shown: readonly ShownHazard[]): readonly ItemDraft[] {
  const texts = [...new Set(shown.flatMap(({ hazard }) => hazard.equipment.map(({ text }) => text)))];
  return texts.map((text): ItemDraft => {
    const users = shown.filter(({ hazard }) => hazard.equipment.some((one) => one.text === text));
    const tasks = [...new Map(users.flatMap((user) => user.tasks.map((task) => [task.id, task] as const))).values()];
    return {
      id: `worn:${text}`, kind: 'worn', hazard: null, taskIds: idsOf(tasks), text, isNeeded: true, recorded: null, record: null, issues: [],
      basis: { text, hazards: users.map(({ hazard }) => hazard.id) },
    };
  });
}

const DEPARTURE_PARTS: readonly (readonly [keyof Departure, string])[] = [
  ['manualValue', "the manual's value"], ['ownValue', 'the value used here'], ['reason', 'the reason'], ['warning', 'the warning'],
];

/** The statement owed where a task departs from the maker's manual. */
export function linesOfDeparture(task: Task): readonly ItemDraft[] {
  const { departure } = task.hazards;
  if (departure === null) return [];
  const missing = DEPARTURE_PARTS.filter(([key]) => departure[key].trim() === '').map(([, words]) => words);
  const issues: readonly Issue[] = missing.length === 0 ? [] : [
    issue('departure-incomplete', `The departure from the manual in “${task.name}” lacks ${missing.join(', ')}.`, 'Write it into the task.', { subjects: [{ kind: 'task', id: task.id, name: task.name }] }),
  ];
  return [{
    id: `departure:${task.id}`, kind: 'departure', hazard: null, taskIds: [task.id], isNeeded: true, recorded: null, record: null, issues, basis: departure,
    text: `Departure from the maker's manual, spoken and on screen: manual ${departure.manualValue}, here ${departure.ownValue}, because ${departure.reason}. ${departure.warning}`,
  }];
}

/** Combinations that touch the episode's tasks. */
export function linesOfCombinations(combinations: readonly Issue[], tasks: readonly Task[]): readonly ItemDraft[] {
  const isHere = new Set(idsOf(tasks));
  return combinations.filter(({ subjects }) => subjects.some(({ kind, id }) => kind === 'task' && isHere.has(id))).map((found): ItemDraft => ({
    id: `combination:${found.code}:${found.subjects.map(({ id }) => id).join('+')}`, kind: 'combination', hazard: null,
    taskIds: found.subjects.filter(({ kind, id }) => kind === 'task' && isHere.has(id)).map(({ id }) => id),
    text: `${found.message} ${found.fix}`, isNeeded: found.severity === 'stop', recorded: null, record: null, issues: [], basis: found.code,
  }));
}
