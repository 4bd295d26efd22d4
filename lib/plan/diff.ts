/** What a new plan changes against the accepted one, in words. */
import { formatLength, formatMoment } from '@/lib/calendar';
import type { Instant } from '@/lib/units';
import { MS_PER_MINUTE } from '@/lib/units';
import type { PlanBlock, PlanResult } from './model';

export interface PlanChange {
  readonly blockId: string;
  readonly title: string;
  readonly kind: 'added' | 'removed' | 'earlier' | 'later' | 'crew' | 'place';
  readonly from: Instant | null;
  readonly to: Instant | null;
  readonly text: string;
}

export interface EpisodeChange {
  readonly episodeId: string;
  readonly before: Instant | null;
  readonly after: Instant | null;
  /** Minutes; positive: later than before. Null when one of the two has no date. */
  readonly shift: number | null;
}

export interface PlanDiff {
  readonly changes: readonly PlanChange[];
  readonly episodes: readonly EpisodeChange[];
  readonly summary: string;
}

const isWork = (block: PlanBlock): boolean => block.kind !== 'cure' && block.kind !== 'away' && block.kind !== 'shut';

function sameList(a: readonly string[], b: readonly string[]): boolean {
  return a.length === b.length && [...a].toSorted().every((item, index) => item === [...b].toSorted()[index]);
}

function compareBlock(before: PlanBlock, after: PlanBlock, zone: string): PlanChange | null {
  const base = { blockId: after.id, title: after.title, from: before.start, to: after.start };
  const shift = (after.start - before.start) / MS_PER_MINUTE;
  if (shift !== 0) {
    const kind = shift < 0 ? 'earlier' : 'later';
    return { ...base, kind, text: `${formatLength(Math.abs(shift))} ${kind}: ${formatMoment(before.start, zone)} becomes ${formatMoment(after.start, zone)}` };
  }
  if (!sameList(before.crewIds, after.crewIds)) return { ...base, kind: 'crew', text: 'the same time with other people' };
  if (before.placeId !== after.placeId) return { ...base, kind: 'place', text: 'the same time at another place' };
  return null;
}

function countWords(changes: readonly PlanChange[]): string {
  const count = (kind: PlanChange['kind']) => changes.filter((change) => change.kind === kind).length;
  const words = [
    [count('added'), 'new'], [count('removed'), 'gone'], [count('earlier'), 'earlier'], [count('later'), 'later'],
    [count('crew'), 'with other people'], [count('place'), 'at another place'],
  ] as const;
  const told = words.filter(([number]) => number > 0).map(([number, word]) => `${number} ${word}`);
  return told.length === 0 ? 'Nothing moves.' : `${told.join(', ')}.`;
}

/** Work that changes from one plan to the next, earliest first. Waits follow the work and are not listed. */
export function diffPlans(before: PlanResult | null, after: PlanResult, zone: string): PlanDiff {
  const old = new Map((before?.blocks ?? []).filter(isWork).map((block) => [block.id, block]));
  const next = new Map(after.blocks.filter(isWork).map((block) => [block.id, block]));
  const changes: PlanChange[] = [];
  for (const block of next.values()) {
    const was = old.get(block.id);
    if (was) changes.push(...[compareBlock(was, block, zone)].filter((change) => change !== null));
    else changes.push({ blockId: block.id, title: block.title, kind: 'added', from: null, to: block.start, text: `new, ${formatMoment(block.start, zone)}` });
  }
  for (const block of old.values()) {
    if (!next.has(block.id)) changes.push({ blockId: block.id, title: block.title, kind: 'removed', from: block.start, to: null, text: `no longer planned, was ${formatMoment(block.start, zone)}` });
  }
  changes.sort((a, b) => (a.to ?? a.from ?? 0) - (b.to ?? b.from ?? 0));
  const episodes = after.episodes.map((episode): EpisodeChange => {
    const was = before?.episodes.find((candidate) => candidate.episodeId === episode.episodeId)?.recordedBy ?? null;
    const shift = was === null || episode.recordedBy === null ? null : (episode.recordedBy - was) / MS_PER_MINUTE;
    return { episodeId: episode.episodeId, before: was, after: episode.recordedBy, shift };
  });
  return { changes, episodes, summary: before === null ? `The first plan: ${next.size} blocks of work.` : countWords(changes) };
}
