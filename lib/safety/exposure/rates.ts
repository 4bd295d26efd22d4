/** What a minute of a task takes of the daily limits of whoever does it: for plans that must keep them. */
import type { SeriesDocument, Task } from '@/lib/build';
import { NOISE_LIMIT } from './noise';
import { taskDose } from './task-vapour';
import { VIBRATION_LIMIT_POINTS, vibrationPoints } from './vibration';

/** dB that ear protection takes off in use, far below its label. Judgement. */
const EAR_PROTECTION = 15;

export type ExposureKind = 'vibration' | 'noise' | 'vapour';

export interface ExposureRate {
  readonly kind: ExposureKind;
  /** Of the kind's unit, for each planned minute of the task, whoever does it. */
  readonly perMinute: number;
  /** What one person may take in one day, in the same unit. */
  readonly dailyLimit: number;
}

/**
 * The rates of a task, those above nothing only, each for **one person on it and one day**:
 * vibration in points of the HSE reckoner (limit 400), noise in shares of a day at 87 dB(A) behind ear protection (limit 1),
 * vapour in shares of eight hours at the material's limit, as breathed without a mask (limit 1).
 * Tools run for their share of the planned time and count one after the other, so the rates are high rather than low.
 * Tools, rooms and materials without a figure add nothing: the pages name them.
 */
export function exposureRates(document: SeriesDocument, task: Task): readonly ExposureRate[] {
  const tools = document.equipment.filter(({ id }) => task.equipmentIds.includes(id)).map(({ exposure }) => exposure);
  const share = task.hazards.toolShare;
  const points = tools.reduce((sum, { vibration }) => sum + vibrationPoints({ magnitude: vibration ?? 0, minutes: 1 }), 0);
  const noise = tools.reduce((sum, { noise: level }) => sum + (level === null ? 0 : 10 ** ((level - EAR_PROTECTION - NOISE_LIMIT) / 10) / 480), 0);
  const rates: readonly ExposureRate[] = [
    { kind: 'vibration', perMinute: points * share, dailyLimit: VIBRATION_LIMIT_POINTS },
    { kind: 'noise', perMinute: noise * share, dailyLimit: 1 },
    { kind: 'vapour', perMinute: taskDose(document, task), dailyLimit: 1 },
  ];
  return rates.filter(({ perMinute }) => perMinute > 0);
}
