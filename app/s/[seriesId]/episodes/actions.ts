'use server';

import { runAction } from '@/app/_actions/run';
import type { Outcome } from '@/app/_actions/outcome';
import { arrangeSegments, logTime, moveSegment, planByExperience, stopTimeLog } from '@/lib/commands';

/** Puts a segment into an episode or none, in front of another or at the end. */
export async function moveSegmentAction(seriesId: string, id: string, revision: number, episodeId: string | null, beforeId: string | null): Promise<Outcome> {
  return runAction(seriesId, (context) => moveSegment(context, seriesId, id, revision, { episodeId, beforeId }));
}

/** Puts the segments into episodes as a proposal says. */
export async function arrangeSegmentsAction(seriesId: string, episodes: readonly { readonly episodeId: string; readonly segmentIds: readonly string[] }[]): Promise<Outcome> {
  return runAction(seriesId, (context) => arrangeSegments(context, seriesId, episodes));
}

/** Starts the clock of a task. */
export async function startClockAction(seriesId: string, taskId: string, activity: 'hands-on' | 'filming'): Promise<Outcome> {
  return runAction(seriesId, (context) => logTime(context, seriesId, taskId, activity));
}

/** Stops a running clock. */
export async function stopClockAction(seriesId: string, logId: string, revision: number, wasInterrupted: boolean): Promise<Outcome> {
  return runAction(seriesId, (context) => stopTimeLog(context, seriesId, logId, revision, wasInterrupted));
}

/** Turns planning by experience on or off. */
export async function planByExperienceAction(seriesId: string, revision: number, isOn: boolean): Promise<Outcome> {
  return runAction(seriesId, (context) => planByExperience(context, seriesId, revision, isOn));
}
