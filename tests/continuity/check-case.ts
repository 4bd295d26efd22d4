/** What the tables of check cases are made of, on the sample series. */
import type { SeriesDocument, Shot, Task } from '@/lib/build';
import { gatherFacts, runChecks, type FactsInput } from '@/lib/continuity';
import { minutes } from '@/lib/units';
import { at, sampleSeries } from '../build/sample-series';
import { NOW } from './sample-log';

export type Case = Partial<Omit<FactsInput, 'document'>> & { readonly document?: SeriesDocument };

/** Check, what is wrong, what is right. */
export type CheckCase = readonly [check: number, what: string, wrong: Case, right: Case];

export const find = (check: number, { document = sampleSeries(), ...more }: Case) =>
  runChecks(gatherFacts({ document, blocks: [], entries: [], now: NOW, ...more })).filter((finding) => finding.check === check);

/** The sample with changed tasks. */
export function withTasks(changes: Readonly<Record<string, Partial<Task>>>, more: Partial<SeriesDocument> = {}): SeriesDocument {
  const document = sampleSeries(more);
  return { ...document, tasks: document.tasks.map((task) => ({ ...task, ...changes[task.id] })) };
}

export const shot = (id: string, purpose: Shot['purpose'], more: Partial<Shot> = {}): Shot => ({ id, name: id, purpose, time: minutes(5), mustHave: false, filmedAt: null, ...more });
export const tue = at('2026-12-01', '18:30');
export const later = at('2026-12-12', '10:00');
const camera = { kind: 'camera', revision: 1, order: 0, rate: { numerator: 25, denominator: 1 }, isDropFrame: false, clockOffset: 0 } as const;
export const cameraA = { ...camera, id: 'camera-a', name: 'A' };
export const cameraB = { ...camera, id: 'camera-b', name: 'B', order: 1 };
export const R25 = { rate: { numerator: 25, denominator: 1 }, isDropFrame: false };
