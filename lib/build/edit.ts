/** A change to a series as data: what each record was and what it becomes. Storage writes it, undo turns it round. */
import type { Instant } from '@/lib/units';
import type { RecordKind, SeriesDocument, SeriesRecord } from './model';

/** `before` null: created. `after` null: removed. Otherwise changed; `after.revision` is `before.revision + 1`. */
export interface RecordEdit {
  readonly kind: RecordKind;
  readonly id: string;
  readonly before: SeriesRecord | null;
  readonly after: SeriesRecord | null;
}

/** One undoable step of a person. */
export interface Change {
  /** What was done, in a few words: `Changed task Strip forks: hands-on time`. */
  readonly label: string;
  readonly edits: readonly RecordEdit[];
  /** Number of the change this one takes back, null for an ordinary one. */
  readonly undoes: number | null;
}

/** A change as kept in the history. */
export interface SavedChange extends Change {
  /** 1, 2, 3 … within its series. */
  readonly number: number;
  readonly at: Instant;
  /** Number of the change that took this one back, null while it stands. */
  readonly undoneBy: number | null;
}

/** What an edit command hands to storage: the next document and the way there. */
export interface Edited {
  readonly document: SeriesDocument;
  readonly change: Change;
}
