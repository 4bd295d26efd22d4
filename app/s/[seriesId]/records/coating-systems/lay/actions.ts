'use server';

import { runAction } from '@/app/_actions/run';
import type { Outcome } from '@/app/_actions/outcome';
import { laySystem } from '@/lib/commands';

interface Laying {
  readonly systemId: string;
  /** Part and state, with a blank between. */
  readonly on: string;
  readonly placeId: string;
  readonly episodeId: string;
  readonly skill: string;
}

/** Unfolds a coating system on a part. */
export async function laySystemAction(seriesId: string, { systemId, on, placeId, episodeId, skill }: Laying): Promise<Outcome> {
  const [partId = '', fromState = ''] = on.split(' ');
  return runAction(seriesId, (context) => laySystem(context, seriesId, systemId, { partId, fromState, placeId, episodeId, skill }));
}
