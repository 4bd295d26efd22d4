/** What the pages of safety show. Plain data. */
import type { Issue } from '@/lib/result';

export interface SafetyChoice {
  readonly value: string;
  readonly label: string;
}

export interface TakeChoice extends SafetyChoice {
  /** Where it starts; empty: not read. */
  readonly timecode: string;
}

export interface SourceLine {
  readonly text: string;
  /** `read 2026-11-25`, `unverified, from memory`. */
  readonly status: string;
  readonly isUnverified: boolean;
}

export interface SignLine {
  readonly code: string;
  readonly meaning: string;
}

/** A line to be signed. */
export interface ItemView {
  readonly id: string;
  /** Id of its place on the page. */
  readonly anchor: string;
  readonly kindWord: string;
  readonly text: string;
  readonly state: 'open' | 'evidenced' | 'excepted' | 'recorded' | 'reopened';
  readonly stateWord: string;
  readonly isNeeded: boolean;
  readonly fingerprint: string;
  /** Why it is open again; null otherwise. */
  readonly why: string | null;
  /** What a record says that answers it; null otherwise. */
  readonly recorded: string | null;
  /** The record that it stands on, to be opened. */
  readonly record: { readonly kind: string; readonly id: string; readonly name: string } | null;
  /** Tasks whose takes may answer it; empty where the line stands in the cut. */
  readonly takeTaskIds: readonly string[];
  /** `Marta, Tue 1 Dec 20:00: cam A 12 at 00:12:04:11`. */
  readonly signed: string | null;
  readonly canWithdraw: boolean;
  readonly issues: readonly Issue[];
  /** Told to the person who signs what to give. */
  readonly asksFor: string;
}

export interface ItemGroup {
  readonly id: string;
  readonly title: string;
  /** `severity I`. */
  readonly severity: string | null;
  readonly signs: readonly SignLine[];
  readonly tasks: readonly SafetyChoice[];
  readonly show: string | null;
  readonly items: readonly ItemView[];
  readonly open: number;
}

export interface BlockRow {
  readonly id: string;
  readonly message: string;
  readonly fix: string;
  /** Anchor of the first line it is about. */
  readonly anchor: string | null;
  /** Who has set it aside, when and why. */
  readonly override: string | null;
}

export interface EpisodeSafetyView {
  readonly seriesId: string;
  readonly episode: { readonly id: string; readonly name: string; readonly revision: number; readonly status: string; readonly release: string };
  readonly standing: string;
  readonly groups: readonly ItemGroup[];
  readonly blocks: readonly BlockRow[];
  readonly openBlocks: number;
  /** Every override there ever was. */
  readonly overrides: readonly string[];
  readonly people: readonly SafetyChoice[];
  /** Takes of the log that may be signed with, by task. */
  readonly takes: Readonly<Record<string, readonly TakeChoice[]>>;
  readonly timecodeExample: string;
  /** How many captions have a time in the cut, of how many. */
  readonly captions: { readonly ready: number; readonly of: number };
  /** Cleared or released, and something is open again. */
  readonly isBehind: boolean;
}

export interface MatrixCellView {
  readonly episodeId: string;
  readonly text: string;
  readonly label: string;
  readonly isOpen: boolean;
}

export interface SafetyRoomView {
  readonly seriesId: string;
  readonly standing: string;
  readonly columns: readonly { readonly id: string; readonly number: number; readonly name: string; readonly status: string; readonly open: number; readonly overrides: number }[];
  readonly rows: readonly { readonly id: string; readonly name: string; readonly severity: string; readonly cells: readonly (MatrixCellView | null)[] }[];
  readonly combinations: readonly Issue[];
  readonly exposures: readonly ExposureRow[];
  readonly sessions: readonly SafetyChoice[];
  readonly reviews: readonly ReviewRow[];
  /** `4 due by January, 12 never read`. */
  readonly reviewSummary: string;
  /** Day, of the series, and those who may have read a source. */
  readonly today: string;
  readonly revision: number;
  readonly people: readonly SafetyChoice[];
  readonly hasPlan: boolean;
  readonly vapours: readonly VapourRow[];
  readonly vapourGaps: readonly Issue[];
}

export interface ReviewRow {
  readonly text: string;
  /** `overdue since Wed 25 Nov 2026`, `read again by …`, `never read`. */
  readonly when: string;
  readonly hazards: string;
  readonly isDue: boolean;
  /** False for common practice: there is nothing to read. */
  readonly canRead: boolean;
}

export interface ExposureRow {
  readonly key: string;
  readonly day: string;
  readonly person: string;
  readonly noise: string;
  readonly vibration: string;
  readonly vapour: string;
  readonly tone: 'below' | 'action' | 'limit' | 'over';
  readonly advice: string;
  readonly unknown: string | null;
}

export interface VapourRow {
  readonly taskId: string;
  readonly name: string;
  readonly text: string;
  readonly isOver: boolean;
}

export interface HazardCard {
  readonly id: string;
  readonly name: string;
  readonly severity: string;
  readonly isOwn: boolean;
  readonly setOffBy: readonly string[];
  readonly controls: readonly { readonly level: string; readonly text: string; readonly isShown: boolean }[];
  readonly equipment: readonly { readonly text: string; readonly sign: string; readonly standard: string }[];
  readonly signs: readonly SignLine[];
  readonly screen: string;
  readonly spoken: string;
  /** `4.4 s on screen, 11 s spoken`. */
  readonly reading: string;
  readonly show: string;
  readonly deferral: string | null;
  readonly sources: readonly SourceLine[];
  /** The hazard as JSON, to be copied and changed. */
  readonly asText: string;
  /** Record to remove, for the users' own. */
  readonly own: { readonly id: string; readonly revision: number } | null;
}

export interface TaskHazardsView {
  readonly seriesId: string;
  readonly task: SafetyChoice;
  readonly standing: string;
  readonly facts: readonly string[];
  readonly found: readonly { readonly id: string; readonly name: string; readonly severity: string; readonly because: string; readonly deferral: string | null }[];
  readonly removed: readonly { readonly id: string; readonly name: string; readonly ruling: string }[];
  readonly others: readonly SafetyChoice[];
  readonly people: readonly SafetyChoice[];
  readonly vapour: VapourRow | null;
  readonly gaps: readonly Issue[];
  readonly combinations: readonly Issue[];
}

export interface BriefView {
  readonly seriesId: string;
  readonly name: string;
  readonly when: string;
  readonly crew: string;
  readonly standing: string;
  readonly hasPlan: boolean;
  readonly order: readonly { readonly id: string; readonly name: string; readonly place: string; readonly why: string }[];
  readonly hazards: readonly { readonly id: string; readonly name: string; readonly severity: string; readonly tasks: string; readonly controls: readonly string[]; readonly spoken: string; readonly deferral: string | null }[];
  readonly layOut: readonly string[];
  readonly worn: readonly string[];
  readonly atHand: readonly SignLine[];
  readonly notAlone: readonly { readonly text: string; readonly isCovered: boolean }[];
  readonly ventilation: readonly string[];
  readonly vapours: readonly VapourRow[];
  readonly combinations: readonly Issue[];
  readonly stopRules: readonly string[];
  readonly exposures: readonly ExposureRow[];
}
