/** What each person gets on each day of a plan. */
import type { Equipment, SeriesDocument, Task } from '@/lib/build';
import { dateOf, endOfDay, type CivilDate } from '@/lib/calendar';
import type { Instant } from '@/lib/units';
import { countNoise, NOISE_ACTION_LOWER, NOISE_ACTION_UPPER, NOISE_LIMIT, type NoiseDay, type NoisePiece } from './noise';
import { taskDose } from './task-vapour';
import { countVibration, VIBRATION_ACTION_POINTS, VIBRATION_LIMIT_POINTS, type VibrationDay, type VibrationPiece } from './vibration';

/** A dated piece of work of a task, with who does it. */
export interface WorkedPiece {
  readonly taskId: string;
  readonly personIds: readonly string[];
  readonly start: Instant;
  readonly end: Instant;
}

export type ExposureLevel = 'below' | 'action' | 'limit' | 'over';

export interface PersonDay {
  readonly personId: string;
  readonly date: CivilDate;
  readonly noise: NoiseDay;
  readonly noiseLevel: ExposureLevel;
  readonly vibration: VibrationDay;
  readonly vibrationLevel: ExposureLevel;
  /** Vapour as breathed without a mask, as a share of eight hours at the limit; tasks add up. */
  readonly vapour: number;
  readonly taskIds: readonly string[];
  /** Tools of loud or shaking work none of which has a figure: what they do is not counted. */
  readonly unknownTools: readonly string[];
}

interface Tally {
  readonly personId: string;
  readonly date: CivilDate;
  readonly noise: NoisePiece[];
  readonly vibration: VibrationPiece[];
  readonly taskIds: Set<string>;
  readonly unknown: Set<string>;
  vapour: number;
}

function judgeNoise({ dailyLevel }: NoiseDay): ExposureLevel {
  if (dailyLevel === null || dailyLevel < NOISE_ACTION_LOWER) return 'below';
  if (dailyLevel > NOISE_LIMIT) return 'over';
  return dailyLevel >= NOISE_ACTION_UPPER ? 'limit' : 'action';
}

function judgeVibration({ points }: VibrationDay): ExposureLevel {
  if (points > VIBRATION_LIMIT_POINTS) return 'over';
  if (points === VIBRATION_LIMIT_POINTS) return 'limit';
  return points >= VIBRATION_ACTION_POINTS ? 'action' : 'below';
}

/** Tools of a task that somebody said are loud or shake, and those with a figure. */
function toolsOf(document: SeriesDocument, task: Task): readonly Equipment[] {
  return document.equipment.filter(({ id }) => task.equipmentIds.includes(id));
}

function addTask(tally: Tally, tools: readonly Equipment[], task: Task, worked: number): void {
  const minutes = Math.min(1440, worked * task.hazards.toolShare);
  tally.taskIds.add(task.id);
  if (minutes <= 0) return;
  for (const { exposure: { noise, vibration } } of tools) {
    if (noise !== null && noise > 0) tally.noise.push({ level: noise, minutes });
    if (vibration !== null && vibration > 0) tally.vibration.push({ magnitude: vibration, minutes });
  }
  const isVibrating = task.hazards.facts.includes('vibrating-tool');
  const isUnknown = (task.isNoisy && tools.every(({ exposure }) => exposure.noise === null)) || (isVibrating && tools.every(({ exposure }) => exposure.vibration === null));
  if (isUnknown) tally.unknown.add(tools.length === 0 ? `${task.name}: no tool named` : tools.map(({ name }) => name).join(', '));
}

/** The parts of a piece on each of its days: work past midnight counts for the next. */
function cutAtMidnight(piece: WorkedPiece, zone: string): readonly { readonly date: CivilDate; readonly minutes: number }[] {
  const parts: { readonly date: CivilDate; readonly minutes: number }[] = [];
  for (let at = piece.start; at < piece.end;) {
    const date = dateOf(at, zone);
    const until = endOfDay(date, zone);
    const to = until < piece.end ? until : piece.end;
    parts.push({ date, minutes: (to - at) / 60_000 });
    at = to;
  }
  return parts;
}

function tallyUp(document: SeriesDocument, pieces: readonly WorkedPiece[]): readonly Tally[] {
  const tasks = new Map(document.tasks.map((task) => [task.id, task]));
  const tallies = new Map<string, Tally>();
  for (const piece of pieces) {
    const task = tasks.get(piece.taskId);
    if (task === undefined) continue;
    const tools = toolsOf(document, task);
    const dose = taskDose(document, task);
    for (const personId of piece.personIds) {
      for (const { date, minutes } of cutAtMidnight(piece, document.series.zone)) {
        const key = `${date}/${personId}`;
        const tally = tallies.get(key) ?? { personId, date, noise: [], vibration: [], taskIds: new Set<string>(), unknown: new Set<string>(), vapour: 0 };
        tallies.set(key, tally);
        addTask(tally, tools, task, minutes);
        tally.vapour += minutes * dose;
      }
    }
  }
  return [...tallies.values()];
}

/**
 * Noise, vibration and vapour by person and day, in order, for the people that the plan has on each piece. Everybody on a task counts as holding its tools; several tools of one
 * task count one after the other for the whole tool time, so the figures are high rather than low.
 * @throws Error when a tool's figure is out of range: the form refuses those
 */
export function listPersonDays(document: SeriesDocument, pieces: readonly WorkedPiece[]): readonly PersonDay[] {
  return tallyUp(document, pieces).map((tally): PersonDay => {
    const [noise, vibration] = [countNoise(tally.noise), countVibration(tally.vibration)];
    if (!noise.ok || !vibration.ok) throw new Error('A tool has noise or vibration out of range');
    return {
      personId: tally.personId, date: tally.date, noise: noise.value, noiseLevel: judgeNoise(noise.value),
      vibration: vibration.value, vibrationLevel: judgeVibration(vibration.value), vapour: tally.vapour,
      taskIds: [...tally.taskIds], unknownTools: [...tally.unknown],
    };
  }).toSorted((a, b) => a.date.localeCompare(b.date) || a.personId.localeCompare(b.personId));
}
