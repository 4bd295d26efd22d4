/** What every record has. */
export interface Row {
  readonly id: string;
  /** Counts the saved changes of this record, from 1. A write names the revision it was based on. */
  readonly revision: number;
  /** Place in its list, 0 first. */
  readonly order: number;
  readonly name: string;
}
