'use server';

import { runAction } from '@/app/_actions/run';
import type { Outcome } from '@/app/_actions/outcome';
import { createRecord, planLateWork, recordJobEvent } from '@/lib/commands';

/** Says that an outside job was dropped off or collected now. `revision` is the one the page showed. */
export async function jobEventAction(seriesId: string, jobId: string, revision: number, event: 'dropped off' | 'collected'): Promise<Outcome> {
  return runAction(seriesId, (context) => recordJobEvent(context, seriesId, jobId, revision, { event, at: context.now() }));
}

/** Writes down the day that a trade last promised; empty takes it back. */
export async function promiseAction(seriesId: string, jobId: string, revision: number, day: string): Promise<Outcome> {
  return runAction(seriesId, (context) => recordJobEvent(context, seriesId, jobId, revision, { event: 'promised', for: day }));
}

interface RunToPlan {
  readonly name: string;
  readonly airZone: string;
  readonly start: number;
  readonly end: number;
  readonly setPoint: number;
}

/** Adds a heating run to the series; the next plan counts with it. */
export async function planHeatingAction(seriesId: string, run: RunToPlan): Promise<Outcome> {
  return runAction(seriesId, (context) => createRecord(context, seriesId, 'heatingRun', run));
}

/** Puts the work that a missed recoat window asks for between the two coats; null: before the next coat, whatever lies under it. */
export async function lateWorkAction(seriesId: string, coatTaskId: string | null, nextTaskId: string): Promise<Outcome> {
  return runAction(seriesId, (context) => planLateWork(context, seriesId, { coatTaskId, nextTaskId }));
}
