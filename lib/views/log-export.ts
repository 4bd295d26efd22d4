/** The log for other programs. */
import type { SeriesDocument } from '@/lib/build';
import { dateOf } from '@/lib/calendar';
import { framesOfSeconds, isTake, standingEntries, type LogEntry, type TakeEntry } from '@/lib/continuity';
import { writeOtio, writeTakesCsv, writeWebVtt, type Cue, type TimelineClip } from '@/lib/exchange';
import type { Result } from '@/lib/result';
import { ok } from '@/lib/result';
import { breakLines, captionSeconds } from '@/lib/safety';
import type { ViewContext } from './context';

export const EXPORTS = ['csv', 'otio', 'vtt'] as const;
export type ExportFormat = (typeof EXPORTS)[number];

export interface ExportedFile {
  readonly name: string;
  readonly type: string;
  readonly text: string;
}

const nameOf = (records: readonly { readonly id: string; readonly name: string }[], id: string | null): string => records.find((record) => record.id === id)?.name ?? '';

/** Length of a take whose end was not read: ten seconds to be seen on the timeline. */
const UNKNOWN_SECONDS = 10;

function clipsOf(document: SeriesDocument, takes: readonly TakeEntry[]): readonly TimelineClip[] {
  const { frameRate } = document.series;
  return takes.map((entry): TimelineClip => {
    const { take } = entry;
    const start = take.startFrame ?? 0;
    const task = document.tasks.find(({ id }) => id === entry.taskId);
    const length = take.startFrame !== null && take.endFrame !== null && take.endFrame > take.startFrame ? take.endFrame - take.startFrame : framesOfSeconds(UNKNOWN_SECONDS, frameRate);
    return {
      name: `${task?.name ?? 'Take'} ${take.number}`, gap: 0, start, length, media: take.media,
      markers: entry.text === '' ? [] : [{ name: entry.text.split('\n')[0] ?? '', frame: start, length: 1, colour: take.verdict === 'good' ? 'GREEN' : take.verdict === 'no good' ? 'RED' : 'YELLOW' }],
      notes: { id: entry.id, verdict: take.verdict, shot: nameOf(task?.shots ?? [], entry.shotId), camera: nameOf(document.cameras, take.cameraId), at: new Date(entry.at).toISOString() },
    };
  });
}

/** Notes, faults and spoken lines as cues, seconds from the first entry; each stands as long as it takes to read. */
function cuesOf(entries: readonly LogEntry[]): readonly Cue[] {
  const spoken = entries.filter(({ text }) => text.trim() !== '');
  const start = spoken[0]?.at ?? 0;
  return spoken.map(({ at, text }) => {
    const seconds = (at - start) / 1000;
    return { start: seconds, end: seconds + captionSeconds(text), text: breakLines(text).join('\n') };
  });
}

/** Takes as a table or a timeline, notes as timed text. */
export async function exportLog({ storage, now }: ViewContext, document: SeriesDocument, format: ExportFormat): Promise<Result<ExportedFile>> {
  const entries = standingEntries(await storage.listLogEntries(document.series.id, {}));
  const takes = entries.filter(isTake);
  const stem = `${document.series.name.toLowerCase().replaceAll(/[^a-z0-9]+/g, '-').replaceAll(/^-|-$/g, '') || 'log'}-${dateOf(now, document.series.zone)}`;
  if (format === 'otio') return ok({ name: `${stem}.otio`, type: 'application/json; charset=utf-8', text: writeOtio({ name: document.series.name, rate: document.series.frameRate, clips: clipsOf(document, takes) }) });
  if (format === 'vtt') {
    const text = writeWebVtt(cuesOf(entries.filter(({ kind }) => kind !== 'waiver')));
    return text.ok ? ok({ name: `${stem}.vtt`, type: 'text/vtt; charset=utf-8', text: text.value }) : text;
  }
  const rows = takes.map((entry) => {
    const task = document.tasks.find(({ id }) => id === entry.taskId);
    return { ...entry, taskName: task?.name ?? '', shotName: nameOf(task?.shots ?? [], entry.shotId), cameraName: nameOf(document.cameras, entry.take.cameraId) };
  });
  return ok({ name: `${stem}.csv`, type: 'text/csv; charset=utf-8', text: writeTakesCsv(rows) });
}
