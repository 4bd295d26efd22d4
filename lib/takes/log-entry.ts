/**
 * The running log. Entries are added and never changed: a later entry takes the place of an earlier one, and both stay.
 * Plain data; made on a device that may have been without network for hours.
 */
import type { Instant } from '@/lib/units';
import type { TimecodeFormat } from './timecode';

export const LOG_KINDS = ['take', 'state', 'look', 'note', 'fault', 'voice', 'departure', 'card', 'waiver'] as const;

/**
 * What an entry is about. `voice`: a spoken line written down; `departure`: another value than the manual's;
 * `card`: what happened to a memory card; `waiver`: a finding of a check that is let pass.
 */
export type LogKind = (typeof LOG_KINDS)[number];

export type ShotSize = 'wide' | 'medium' | 'close';

export interface TakeFacts {
  readonly cameraId: string | null;
  /** How the camera counted when it was logged; null without timecode. */
  readonly format: TimecodeFormat | null;
  /** First frame and the one after the last, time of day of the camera; null: not read. */
  readonly startFrame: number | null;
  readonly endFrame: number | null;
  /** 1 for the first take of its shot. */
  readonly number: number;
  readonly size: ShotSize | null;
  readonly verdict: 'good' | 'no good' | 'unsure';
  /** Card and clip: `A12 / 0034`. */
  readonly media: string;
  readonly isReenacted: boolean;
  /** What is shown on screen over a re-enactment; empty: nothing. */
  readonly reenactmentLabel: string;
  /** It went wrong and may be shown as that. */
  readonly isFailedAttempt: boolean;
}

export interface Whereabouts {
  readonly kind: 'place' | 'trade' | 'store';
  readonly id: string | null;
}

/** A part as somebody saw it. */
export interface Observation {
  readonly partId: string;
  /** null: only where it is was seen. */
  readonly stateId: string | null;
  readonly whereabouts: Whereabouts | null;
}

/** What must match between neighbouring pictures. Empty: not noted. */
export interface Look {
  readonly clothes: string;
  readonly equipment: string;
  readonly light: string;
  readonly whiteBalance: string;
  readonly lens: string;
  /** Where tools and things on the bench lie. */
  readonly tools: string;
}

/** Work done otherwise than the maker's manual says. */
export interface Departure {
  readonly manualValue: string;
  readonly ownValue: string;
  readonly reason: string;
  readonly warning: string;
  readonly isSpoken: boolean;
  readonly isCaptioned: boolean;
}

export interface CardEvent {
  readonly card: string;
  readonly what: 'copied' | 'copy verified' | 'reformatted';
}

/** `key` names one finding of a check; its reason is the text of the entry. */
export interface Waiver {
  readonly check: number;
  readonly key: string;
}

export interface LogEntry {
  /** Made on the device: the same entry sent twice is kept once. */
  readonly id: string;
  /** Order of arrival within the database, from 1. */
  readonly number: number;
  readonly kind: LogKind;
  /** When it happened, by the device's clock put right. */
  readonly at: Instant;
  /** What the device's clock said. */
  readonly deviceAt: Instant;
  readonly receivedAt: Instant;
  readonly device: string;
  readonly author: string;
  readonly taskId: string | null;
  readonly shotId: string | null;
  readonly text: string;
  readonly take: TakeFacts | null;
  readonly observed: readonly Observation[];
  readonly look: Look | null;
  readonly departure: Departure | null;
  readonly card: CardEvent | null;
  readonly waiver: Waiver | null;
  /** The entry that this one takes the place of. */
  readonly supersedes: string | null;
  /** True: nothing comes in the place of the earlier entry; it is taken back. */
  readonly isWithdrawn: boolean;
}

/** An entry that is a take. */
export interface TakeEntry extends LogEntry {
  readonly take: TakeFacts;
}

export function isTake(entry: LogEntry): entry is TakeEntry {
  return entry.take !== null;
}

/** The first entry of a chain of replacements. A chain that bites its tail ends where it began. */
function rootOf(entry: LogEntry, byId: ReadonlyMap<string, LogEntry>): string {
  const seen = new Set<string>();
  let root = entry;
  for (let next = entry.supersedes === null ? undefined : byId.get(entry.supersedes); next !== undefined && !seen.has(next.id); next = next.supersedes === null ? undefined : byId.get(next.supersedes)) {
    seen.add(next.id);
    root = next;
  }
  return root.supersedes !== null && !byId.has(root.supersedes) ? root.supersedes : root.id;
}

/**
 * The entries that count: of each chain of replacements the one that arrived last, none when that takes it back.
 * In the order in which things happened. The log itself keeps them all.
 */
export function standingEntries(entries: readonly LogEntry[]): readonly LogEntry[] {
  const replacing = entries.some(({ supersedes }) => supersedes !== null);
  const byTime = (list: readonly LogEntry[]) => list.filter((entry) => !entry.isWithdrawn).toSorted((a, b) => a.at - b.at || a.number - b.number);
  if (!replacing) return byTime(entries);
  const byId = new Map(entries.map((entry) => [entry.id, entry]));
  const last = new Map<string, LogEntry>();
  for (const entry of entries) {
    const root = rootOf(entry, byId);
    const held = last.get(root);
    if (held === undefined || entry.number > held.number) last.set(root, entry);
  }
  return byTime([...last.values()]);
}

/** Everything in an entry that can be looked for, in one text. */
export function wordsOf(entry: LogEntry, names: readonly string[]): string {
  const { take, look, departure, card } = entry;
  const words = [
    entry.text, entry.author, entry.kind, take?.media, take === null ? '' : `take ${take.number}`, take?.verdict, take?.reenactmentLabel,
    ...(look === null ? [] : Object.values(look)),
    departure?.manualValue, departure?.ownValue, departure?.reason, departure?.warning, card?.card, card?.what, ...names,
  ];
  return words.filter((word) => word !== undefined && word !== '').join(' · ');
}
