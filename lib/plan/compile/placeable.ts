/** Activities that nothing ahead can hold are told apart before the engine sees them. */
import { formatWorkLength } from '@/lib/calendar';
import type { Task } from '@/lib/build';
import { asksForSecond } from '@/lib/safety';
import type { Activity, Interval } from '@/lib/scheduling';
import type { Draft } from './draft';
import { readName } from './names';
import { closuresOf, demandWords, taskCalendar } from './session-calendars';

interface Impossibility {
  readonly text: string;
  readonly change: string;
}

function calendarFault(activity: Activity, intervals: readonly Interval[], demands: string): Impossibility | null {
  if (intervals.length === 0) return { text: `No time ahead is ${demands}.`, change: `Add a session ${demands}.` };
  const lengths = intervals.map((interval) => interval.end - interval.start);
  const needed = formatWorkLength(activity.duration);
  const longest = Math.max(...lengths);
  if (activity.mode === 'one-go' && longest < activity.duration) {
    return { text: `Takes ${needed} in one go, and the longest time ahead ${demands} is ${formatWorkLength(longest)}.`, change: 'Split the work into two, allow pauses, or add a longer session.' };
  }
  const piece = activity.shortestPiece ?? 0;
  if (longest < piece) {
    return { text: `Takes ${needed} in pieces of at least ${formatWorkLength(piece)}, and the longest time ahead ${demands} is ${formatWorkLength(longest)}.`, change: 'Add a longer session.' };
  }
  const total = lengths.filter((length) => length >= piece).reduce((sum, length) => sum + length, 0);
  if (total < activity.duration) return { text: `Takes ${needed}, and all the time ahead ${demands} is ${formatWorkLength(total)}.`, change: `Add sessions ${demands}.` };
  return null;
}

function crewFault(draft: Draft, activity: Activity): Impossibility | null {
  for (const { pool, count } of activity.crew ?? []) {
    if (pool.length >= count) continue;
    const names = pool.map((resource) => draft.document.people.find((person) => person.id === readName(resource).id)?.name ?? resource);
    const have = names.length === 0 ? 'nobody has it' : `only ${names.join(' and ')} ${names.length === 1 ? 'has' : 'have'} it`;
    return { text: `Needs ${count} ${count === 1 ? 'person' : 'people'} with the skill, and ${have}.`, change: 'Give the skill to another person, or ask for fewer.' };
  }
  return aloneFault(draft, activity);
}

/** One of the crew alone, with work that is never done with one person. */
function aloneFault({ document, tasks }: Draft, activity: Activity): Impossibility | null {
  const { kind, id } = readName(activity.id);
  const task = kind === 'task' ? tasks.get(id) : undefined;
  const hazard = task === undefined || document.people.length > 1 ? null : asksForSecond(document, task);
  if (hazard === null) return null;
  return { text: `Is never done with one person (${hazard.name.toLowerCase()}), and there is nobody else in the crew.`, change: 'Add a second person, or give the work to an outside trade.' };
}

/** Why no time ahead can hold work of a task, or of what the words say; where only cold or heat closes it, with what would open it. */
function timeFault(draft: Draft, activity: Activity, of: Task | string): Impossibility | null {
  const intervals = activity.calendar === undefined ? [] : (draft.calendars.get(activity.calendar)?.intervals ?? []);
  const fault = calendarFault(activity, intervals, typeof of === 'string' ? of : demandWords(draft, of));
  const closures = fault === null || typeof of === 'string' ? [] : closuresOf(draft, of);
  if (fault === null || typeof of === 'string' || closures.length === 0) return fault;
  const open = draft.calendars.get(taskCalendar(draft, of, []))?.intervals ?? [];
  if (calendarFault(activity, open, '') !== null) return fault;
  return { ...fault, change: closures.map(({ change }) => change).join(' ') };
}

/**
 * Adds an activity of a task, or of what the words ask of its times. One that no time or crew can hold is kept in the problem without its calendar and crew,
 * released at the horizon: the engine then finds no place for it, nor for what waits for it.
 */
export function addActivity(draft: Draft, activity: Activity, of: Task | string): void {
  const fault = crewFault(draft, activity) ?? timeFault(draft, activity, of);
  if (!fault) {
    draft.activities.push(activity);
    return;
  }
  draft.impossible.set(activity.id, fault);
  const duration = Math.max(1, activity.duration);
  draft.activities.push({ id: activity.id, duration, mode: 'one-go', demands: [], release: draft.horizon });
}
