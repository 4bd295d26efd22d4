/** A heater that keeps a solvent coat out of its air, in words. */
import { roomOf, type Material } from '@/lib/build';
import { formatMoment } from '@/lib/calendar';
import type { Activity, Placement } from '@/lib/scheduling';
import type { Compiled } from '../compile/compile';
import type { Draft } from '../compile/draft';
import { heaterHours, type HeaterHours } from '../compile/heater-hours';
import { readName } from '../compile/names';
import { fireChange, taskCalendar } from '../compile/session-calendars';
import { readyAfter } from '../compile/wait-table';
import type { Because } from '../model';

type Words = Pick<Because, 'text' | 'change'>;

function tell(draft: Draft, hours: HeaterHours): Words {
  const at = (minute: number): string => formatMoment(draft.clock.moment(minute), draft.document.series.zone);
  return {
    text: `${hours.materialName} gives off solvent until it is touch dry, and the ${hours.heater} heater of ${hours.airZone} is on from ${at(hours.on.start)} to ${at(hours.on.end)}.`,
    change: fireChange(hours.airZone, hours.materialName),
  };
}

/** What heating a coat asks for where the heater of its air can light solvent: ` …`; empty where it cannot. */
export function heatCaution({ document }: Draft, airZone: string, material: Material): string {
  const isFine = !material.hasSolvent || document.series.workshop === undefined || roomOf(document.series, airZone).heater.isIgnitionSafe;
  return isFine ? '' : ', heated only once it is touch dry or with something made for air that holds solvent';
}

/** The heating that a pinned coat would meet; null when it meets none. */
export function pinnedInHeat(draft: Draft, activity: Activity | undefined): Words | null {
  const task = activity === undefined ? undefined : draft.tasks.get(readName(activity.id).id);
  if (activity?.pin === undefined || task === undefined || readName(activity.id).kind !== 'task') return null;
  const { start } = activity.pin;
  const met = heaterHours(draft, task).find(({ closed }) => closed.start < start + activity.duration && start < closed.end);
  return met === undefined ? null : tell(draft, met);
}

/** When what comes before an activity lets it begin. */
function floorOf({ problem, draft }: Compiled, placements: ReadonlyMap<string, Placement>, activity: Activity): number {
  return problem.lags.reduce((floor, { from, to, min }) => {
    const before = to.activity === activity.id ? placements.get(from.activity) : undefined;
    if (before === undefined || min === undefined) return floor;
    return Math.max(floor, min.kind === 'working' ? before.end : readyAfter(min, before.end));
  }, Math.max(draft.nowMinute, activity.release ?? 0));
}

/** The last heating that took time from a placed coat before its start; null where none did. */
export function heaterBecause(compiled: Compiled, placements: ReadonlyMap<string, Placement>, placement: Placement): Because | null {
  const { draft, problem } = compiled;
  const task = readName(placement.activity).kind === 'task' ? draft.tasks.get(readName(placement.activity).id) : undefined;
  const hours = task === undefined || task.coats.length === 0 ? [] : heaterHours(draft, task).filter(({ closed }) => closed.start < placement.start);
  const activity = hours.length === 0 ? undefined : problem.activities.find(({ id }) => id === placement.activity);
  if (task === undefined || activity === undefined) return null;
  const floor = floorOf(compiled, placements, activity);
  const open = draft.calendars.get(taskCalendar(draft, task, []))?.intervals ?? [];
  const fits = ({ closed }: HeaterHours): boolean => open.some((session) =>
    Math.min(session.end, closed.end, placement.start) - Math.max(session.start, closed.start, floor) >= Math.min(activity.duration, activity.shortestPiece ?? activity.duration));
  const last = hours.findLast(fits);
  return last === undefined ? null : { ...tell(draft, last), until: draft.clock.moment(last.on.end), blockId: null };
}
