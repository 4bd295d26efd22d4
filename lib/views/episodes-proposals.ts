/** Which segments could go into which episodes. */
import { arrangeSegments, shootDue, type Episode, type Segment, type SeriesDocument } from '@/lib/build';
import { packParallel, packSegments, USUAL_WEIGHTS, type Packing, type PackedEpisode, type PackingRules, type StorySegment } from '@/lib/episodes';
import { fail, issue, ok, type Result } from '@/lib/result';
import { checkOrder, listOpenEpisodes, segmentReadyAt, type EpisodesInput } from './episodes-facts';
import type { ProposalView } from './episodes-model';
import { formatCount } from './week-words';

/** Segments that may still be moved: in no episode, or in one that is not recorded yet. */
function listMovable({ document }: EpisodesInput, open: readonly Episode[]): readonly Segment[] {
  const ids = new Set(open.map((episode) => episode.id));
  return document.segments.filter((segment) => segment.episodeId === null || ids.has(segment.episodeId));
}

const TITLES = ['Best', 'Second', 'Third'];

const percent = (value: number): string => `${Math.round(100 * value)} %`;
const rounded = (value: number): number => Math.round(value * 10) / 10;

/** The terms of an episode's cost as reasons. */
function tellReasons({ length, results, terms }: PackedEpisode, { runtime, weights }: PackingRules): string {
  const off = rounded(Math.abs(length - runtime.target));
  const said = [`${rounded(length)} min, ${off === 0 ? 'as wished' : `${off} ${length < runtime.target ? 'under' : 'over'}`}`, formatCount(results, 'result')];
  if (terms.hook < 0) said.push(`opens at ${percent(-terms.hook / weights.hook)}`);
  if (terms.hang < 0) said.push(`leaves ${percent(-terms.hang / weights.hang)} open`);
  return said.join(', ');
}

/** Parts that would go back in time on screen if it were put so, and do not as it is. */
function listBackwards(document: SeriesDocument, arrangement: ProposalView['arrangement']): readonly string[] {
  const known = new Set(checkOrder(document).map(({ message }) => message));
  const arranged = arrangeSegments(document, arrangement);
  return arranged.ok ? checkOrder(arranged.value.document).map(({ message }) => message).filter((message) => !known.has(message)) : [];
}

interface Shown {
  readonly document: SeriesDocument;
  readonly open: readonly Episode[];
  readonly segments: readonly Segment[];
  readonly rules: PackingRules;
}

function show(packing: Packing, title: string, gap: string | null, { document, open, segments, rules }: Shown): ProposalView {
  const byId = new Map(segments.map((segment) => [segment.id, segment]));
  const placed = packing.episodes.map((packed, index) => ({ packed, episode: open[index]! }));
  const isNew = (id: string, episodeId: string): boolean => byId.get(id)?.episodeId !== episodeId;
  const arrangement = placed.map(({ packed, episode }) => ({ episodeId: episode.id, segmentIds: packed.segmentIds }));
  return {
    title, gap, arrangement,
    warnings: listBackwards(document, arrangement),
    moves: placed.reduce((sum, { packed, episode }) => sum + packed.segmentIds.filter((id) => isNew(id, episode.id)).length, 0),
    episodes: placed.map(({ packed, episode }) => ({
      name: episode.name,
      reasons: tellReasons(packed, rules),
      segments: packed.segmentIds.map((id) => ({ name: byId.get(id)?.name ?? id, isNew: isNew(id, episode.id) })),
    })),
  };
}

/**
 * The three best ways to put what is not recorded yet into the next episodes, in the order of the story; evergreen segments stay in
 * hand. With more than one thread, or where it takes evergreens to fill the episodes, one way, and how far it can be from the best.
 * Fails with the reasons why there is none.
 */
export function proposePackings(input: EpisodesInput): Result<readonly ProposalView[]> {
  const { document } = input;
  const { runtime, titles } = document.series;
  const open = listOpenEpisodes(document).filter((episode) => !episode.isEvergreen);
  const evergreenIds = new Set(document.episodes.filter((episode) => episode.isEvergreen).map((episode) => episode.id));
  const segments = listMovable(input, open).filter((segment) => segment.episodeId === null || !evergreenIds.has(segment.episodeId));
  if (segments.length === 0) return ok([]);
  if (open.length === 0) return fail([issue('no-open-episode', 'Segments wait for an episode, and no episode is left to be recorded.', 'Add an episode.')]);
  const rules: PackingRules = { runtime, titles, leastResults: 1, weights: USUAL_WEIGHTS };
  const shown: Shown = { document, open, segments, rules };
  const read = (segment: Segment): StorySegment => ({ ...segment, readyAt: segmentReadyAt(input, segment) });
  const dueAt = open.map((episode) => shootDue(document.series, episode));
  const [evergreens, told] = [segments.filter((segment) => segment.isEvergreen), segments.filter((segment) => !segment.isEvergreen)];
  const names = [...new Set(told.map((segment) => segment.thread))];
  const cuts = {
    cutAfter: segments.filter((segment) => segment.ending === 'ends the episode').map(({ id }) => id),
    noCutAfter: segments.filter((segment) => segment.ending === 'never ends it').map(({ id }) => id),
  };
  if (names.length <= 1) {
    const packed = packSegments({ segments: told.map(read), rules, dueAt, episodeCount: null, ...cuts });
    if (packed.ok) return ok(packed.value.map((packing, index) => show(packing, TITLES[index] ?? '', null, shown)));
    if (evergreens.length === 0) return packed;
  }
  const threads = names.map((name) => told.filter((segment) => segment.thread === name).map(read));
  const packed = packParallel({ threads, evergreens: evergreens.map(read), rules, dueAt, ...cuts });
  if (!packed.ok) return packed;
  const gap = packed.value.gap < 1e-9 ? null : `at most ${Math.ceil(packed.value.gap * 1000) / 1000} points from the best there is`;
  return ok([show(packed.value, 'Best found', gap, shown)]);
}
