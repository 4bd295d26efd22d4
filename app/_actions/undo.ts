'use server';

import { undoChange } from '@/lib/commands';
import { runAction } from './run';
import type { Outcome } from './outcome';

/** Takes back a change of a series by a change of its own. */
export async function undoAction(seriesId: string, changeNumber: number): Promise<Outcome> {
  return runAction(seriesId, (context) => undoChange(context, seriesId, changeNumber));
}
