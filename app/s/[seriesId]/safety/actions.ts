'use server';

import { runAction } from '@/app/_actions/run';
import type { Outcome } from '@/app/_actions/outcome';
import { addHazards, changeRecord, overrideGate, recordReading, ruleHazard, signItem } from '@/lib/commands';

/** What is typed in the small forms of safety; the commands read and judge it. */
type Input = Readonly<Record<string, unknown>>;

export async function signItemAction(seriesId: string, input: Input): Promise<Outcome> {
  return runAction(seriesId, (context) => signItem(context, seriesId, input));
}

export async function overrideGateAction(seriesId: string, input: Input): Promise<Outcome> {
  return runAction(seriesId, (context) => overrideGate(context, seriesId, input));
}

/** Calls an episode cleared or released, if the gate lets it through. */
export async function setStatusAction(seriesId: string, episodeId: string, revision: number, status: string): Promise<Outcome> {
  return runAction(seriesId, (context) => changeRecord(context, seriesId, 'episode', episodeId, revision, { status }));
}

export async function ruleHazardAction(seriesId: string, input: Input): Promise<Outcome> {
  return runAction(seriesId, (context) => ruleHazard(context, seriesId, input));
}

export async function addHazardsAction(seriesId: string, text: string): Promise<Outcome> {
  return runAction(seriesId, (context) => addHazards(context, seriesId, text));
}

export async function recordReadingAction(seriesId: string, input: Input): Promise<Outcome> {
  return runAction(seriesId, (context) => recordReading(context, seriesId, input));
}
