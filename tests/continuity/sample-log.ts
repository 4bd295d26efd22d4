/** Log entries and blocks for tests, on the sample series. */
import type { PlannedBlock } from '@/lib/continuity';
import type { LogEntry, Look, TakeFacts } from '@/lib/footage';
import { instant, type Instant } from '@/lib/units';
import { at } from '../build/sample-series';

export const NOW = at('2026-12-10', '12:00');

let last = 0;

export function entry(more: Partial<LogEntry> = {}): LogEntry {
  last += 1;
  const moment = more.at ?? at('2026-12-01', '19:00');
  return {
    id: `entry-${last}`, number: last, kind: 'note', at: moment, deviceAt: moment, receivedAt: moment, device: 'phone', author: 'Robin', taskId: null, shotId: null,
    text: '', take: null, observed: [], look: null, departure: null, card: null, waiver: null, supersedes: null, isWithdrawn: false, ...more,
  };
}

export const TAKE: TakeFacts = {
  cameraId: null, format: null, startFrame: null, endFrame: null, number: 1, size: null, verdict: 'good', media: '', isReenacted: false, reenactmentLabel: '', isFailedAttempt: false,
};

export const take = (more: Partial<TakeFacts> = {}, around: Partial<LogEntry> = {}): LogEntry => entry({ kind: 'take', take: { ...TAKE, ...more }, ...around });

export const LOOK: Look = { clothes: '', equipment: '', light: '', whiteBalance: '', lens: '', tools: '' };

/** A block of a task from a moment, `hours` long. */
export function block(taskId: string, start: Instant, hours: number, more: Partial<PlannedBlock> = {}): PlannedBlock {
  const end = instant(start + hours * 3_600_000);
  return {
    id: `task:${taskId}`, kind: 'task', subject: { kind: 'task', id: taskId }, title: taskId, start, end, pieces: [{ start, end }], placeId: 'place-bench', crewIds: [], partIds: ['part-frame'], stages: null, ...more,
  };
}
