/** What the chance of losing a shot that happens once is, where the shot is shown. */
import { isFilmedAhead, type Shot, type Task } from '@/lib/build';
import { oneWayRisk } from '@/lib/episodes';

const percent = (value: number): string => `${Math.round(value * 1000) / 10} %`;

/** `happens once: lost 5 % of the time with one camera, 0.7 % with two`; null: the shot can be taken again, or is in the can. */
export function tellShotRisk(task: Task, shot: Shot): string | null {
  if (!task.irreversible || isFilmedAhead(task, shot) || shot.filmedAt !== null || task.doneAt !== null) return null;
  return `happens once: lost ${percent(oneWayRisk(1, 1).shot)} of the time with one camera, ${percent(oneWayRisk(1, 2).shot)} with two`;
}
