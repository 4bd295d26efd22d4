/** Checks that every exposure must pass before it is counted. */
import { subjectOf, type SeriesDocument, type Task } from '@/lib/build';
import { issue, type Issue } from '@/lib/result';

/** A length that counts: more than nothing and at most a day. */
export function checkDuration(minutes: number, what: string, path: readonly (string | number)[]): readonly Issue[] {
  if (Number.isFinite(minutes) && minutes > 0 && minutes <= 1440) return [];
  const said = Number.isFinite(minutes) ? `${minutes} minutes` : 'no duration';
  return [issue('exposure-without-duration', `${what} has ${said}.`, 'Give the minutes, more than 0 and at most 1440.', { path })];
}

/** A magnitude within bounds, both allowed. */
export function checkMagnitude(value: number, what: string, bounds: { readonly low: number; readonly high: number; readonly unit: string }, path: readonly (string | number)[]): readonly Issue[] {
  const { low, high, unit } = bounds;
  if (Number.isFinite(value) && value >= low && value <= high) return [];
  return [issue('exposure-out-of-range', `${what} is ${Number.isFinite(value) ? `${value} ${unit}` : 'not a number'}.`, `Give a value from ${low} to ${high} ${unit}.`, { path })];
}

/** Tools with a figure, or paint sprayed, that run for none of a task's time: an exposure without a duration. */
export function checkTaskExposure({ equipment }: Pick<SeriesDocument, 'equipment'>, task: Task): readonly Issue[] {
  if (task.hazards.toolShare > 0) return [];
  const tools = equipment.filter(({ id, exposure }) => task.equipmentIds.includes(id) && (exposure.noise !== null || exposure.vibration !== null)).map(({ name }) => name);
  const what = [...tools, ...(task.hazards.sprayed !== null && task.hazards.sprayed > 0 ? ['the paint sprayed'] : [])];
  if (what.length === 0) return [];
  return [issue('exposure-without-duration', `“${task.name}” exposes people to ${what.join(', ')} for none of its time.`, 'Give the share of the time that tools run, above 0 %, or take them out of the task.', { path: ['hazards', 'toolShare'], subjects: [subjectOf(task)] })];
}
