/** The cautions of an episode as a WebVTT file, at the times signed for them in the cut. */
import type { SeriesDocument } from '@/lib/build';
import type { Result } from '@/lib/result';
import { buildChecklist, timecodeSeconds, writeCaptions, type CaptionFile, type Cue } from '@/lib/safety';

/** Cautions whose time in the cut is signed. Fails like `writeCaptions`. */
export function viewCaptions(document: SeriesDocument, episodeId: string): Result<CaptionFile> {
  const cues = buildChecklist(document, episodeId).items.flatMap(({ id, kind, text, state, signed }): readonly Cue[] => {
    if (kind !== 'caption' || state !== 'evidenced' || signed?.about.sort !== 'evidence' || signed.about.evidence.kind !== 'take') return [];
    const start = timecodeSeconds(signed.about.evidence.timecode, document.series.frameRate);
    return start.ok ? [{ id, start: start.value, end: null, text }] : [];
  });
  return writeCaptions(cues);
}
