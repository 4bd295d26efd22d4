'use server';

import { runAction } from '@/app/_actions/run';
import type { Outcome } from '@/app/_actions/outcome';
import { copyMaterial } from '@/lib/commands';

/** Copies a material of the library into the series. */
export async function copyMaterialAction(seriesId: string, libraryId: string): Promise<Outcome> {
  return runAction(seriesId, (context) => copyMaterial(context, seriesId, libraryId));
}
