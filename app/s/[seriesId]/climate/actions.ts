'use server';

import { runAction } from '@/app/_actions/run';
import type { Outcome } from '@/app/_actions/outcome';
import { fitRoomTo, importReadings } from '@/lib/commands';
import type { Issue } from '@/lib/result';

interface ReadingsToImport {
  readonly name: string;
  readonly airZone: string;
  readonly zone: string;
  readonly unit: string;
  readonly dateOrder: string;
  readonly text: string;
}

/** What an import answers besides the change: the rows that were left out or doubted. */
export type ImportOutcome = Outcome & { readonly found?: { readonly rows: number; readonly kept: number; readonly issues: readonly Issue[] } };

/** Keeps the good rows of a logger's file and tells of the others. */
export async function importReadingsAction(seriesId: string, input: ReadingsToImport): Promise<ImportOutcome> {
  let found: ImportOutcome['found'];
  const outcome = await runAction(seriesId, async (context) => {
    const imported = await importReadings(context, seriesId, input);
    if (imported.ok) found = { rows: imported.value.rows, kept: imported.value.kept, issues: imported.value.issues };
    return imported;
  });
  return found === undefined ? outcome : { ...outcome, found };
}

/** Takes what the readings say of the room over. `revision` is that of the series as the page showed it. */
export async function fitRoomAction(seriesId: string, revision: number, fit: { readonly timeConstant: number; readonly offset: number; readonly airZone: string }): Promise<Outcome> {
  return runAction(seriesId, (context) => fitRoomTo(context, seriesId, revision, fit));
}
