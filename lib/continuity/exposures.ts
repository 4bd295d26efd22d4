/** Where in an episode a hazard is first shown, and where its caution stands. */
import type { Episode, Segment, SeriesDocument } from '@/lib/build';
import { buildChecklist, timecodeSeconds, type ChecklistItem, type Hazard } from '@/lib/safety';
import type { Facts } from './facts';
import { once } from './once';

const SECONDS_PER_MINUTE = 60;

/** A segment in its episode, seconds from the start. */
interface Placed {
  readonly segment: Segment;
  readonly start: number;
  /** False: by the lengths of what comes before it. */
  readonly isCut: boolean;
  readonly end: number;
}

/** Segments of an episode by their start in the cut, or by the lengths before them. Titles come in front. */
function placeSegments({ series, segments }: SeriesDocument, episodeId: string): readonly Placed[] {
  let next = series.titles * SECONDS_PER_MINUTE;
  return segments.filter((segment) => segment.episodeId === episodeId).map((segment) => {
    const start = segment.cutStart ?? next;
    next = start + segment.length * SECONDS_PER_MINUTE;
    return { segment, start, isCut: segment.cutStart !== undefined, end: next };
  });
}

export interface Caption {
  readonly item: ChecklistItem;
  readonly hazard: Hazard;
  /** Seconds in the episode; null: not signed, or its label is none. */
  readonly at: number | null;
  /** The first segment that shows the hazard; null: no segment does. */
  readonly first: Placed | null;
}

function captionsOf(document: SeriesDocument, episode: Episode): readonly Caption[] {
  const placed = placeSegments(document, episode.id).toSorted((a, b) => a.start - b.start);
  return buildChecklist(document, episode.id, { combinations: [] }).items.flatMap((item): readonly Caption[] => {
    if (item.kind !== 'caption' || item.hazard === null) return [];
    const about = item.signed?.about;
    const label = item.state === 'evidenced' && about?.sort === 'evidence' && about.evidence.kind === 'take' ? timecodeSeconds(about.evidence.timecode, document.series.frameRate) : null;
    const first = placed.find(({ segment }) => segment.taskIds.some((id) => item.taskIds.includes(id))) ?? null;
    return [{ item, hazard: item.hazard, at: label?.ok ? label.value : null, first }];
  });
}

/** Past the edit: cautions have their place. */
export const isCut = ({ status }: Episode): boolean => status === 'cut' || status === 'cleared' || status === 'released';

/** Cautions on screen that each cut episode owes, by the hazards it shows. */
export const listCaptions = once(({ document }: Facts): ReadonlyMap<string, readonly Caption[]> =>
  new Map(document.episodes.filter(isCut).map((episode) => [episode.id, captionsOf(document, episode)])));

/** @example saySeconds(94.2) // '1:34' */
export function saySeconds(seconds: number): string {
  const whole = Math.floor(seconds);
  return `${Math.floor(whole / SECONDS_PER_MINUTE)}:${String(whole % SECONDS_PER_MINUTE).padStart(2, '0')}`;
}
