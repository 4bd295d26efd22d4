/** One line of an episode's checklist. */
import type { Issue, Subject } from '@/lib/result';
import type { Statement } from '@/lib/build';
import type { Hazard } from './model';

export type ItemKind =
  /** A control that should be seen in the footage, or may serve as proof for a severe hazard. */
  | 'control'
  /** Protective equipment, worn in the shot. */
  | 'worn'
  /** The caution, spoken. */
  | 'spoken'
  /** The caution, on screen. */
  | 'caption'
  /** Left to somebody licensed or equipped for it. */
  | 'deferral'
  /** The statement of a departure from the maker's manual. */
  | 'departure'
  /** Two things together. */
  | 'combination'
  | 'flash' | 'disclosure' | 'captions' | 'consents';

export type ItemState =
  | 'open'
  /** In a take, signed. */
  | 'evidenced'
  /** Not needed here, reviewed and signed. */
  | 'excepted'
  /** Answered by a record, such as a consent: no signature is needed. */
  | 'recorded'
  /** Signed once; the task, the hazard, the shots or the take has changed since. */
  | 'reopened';

/** A line before anybody has signed it. */
export interface ItemDraft {
  /** Stable in the episode. */
  readonly id: string;
  readonly kind: ItemKind;
  readonly hazard: Hazard | null;
  readonly taskIds: readonly string[];
  readonly text: string;
  /** Blocks while it is open. */
  readonly isNeeded: boolean;
  /** What a signature stands on, besides the tasks. */
  readonly basis: unknown;
  /** What a record says that answers the line; null: it is answered by a signature. */
  readonly recorded: string | null;
  /** The record that it stands on, where there is one to be filled in. */
  readonly record: Subject | null;
  /** What is wrong with the line itself, such as a departure without its value. */
  readonly issues: readonly Issue[];
}

/** Nothing is owed on the line any more. */
export function isAnswered({ state }: Pick<ChecklistItem, 'state'>): boolean {
  return state === 'evidenced' || state === 'excepted' || state === 'recorded';
}

export interface ChecklistItem extends Omit<ItemDraft, 'basis'> {
  readonly state: ItemState;
  /** Why it is open again, to follow “It was signed, and”; null in the other states. */
  readonly why: string | null;
  /** Of now, of the line, its tasks and their shots; a signature made on another one no longer counts. */
  readonly fingerprint: string;
  /** The last signature, counting or not. */
  readonly signed: Statement | null;
}
