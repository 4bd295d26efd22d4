/** What every check has in common. */
import { subjectOf, type SeriesRecord } from '@/lib/build';
import { issue, type Issue } from '@/lib/result';
import type { Facts } from '../facts';

/** Something that will not cut together, or may not be done. `stop` blocks, `warn` is let pass. */
export interface Finding extends Issue {
  /** Number of the check that found it. */
  readonly check: number;
  /** The same finding has the same key after every change, so that a waiver finds it again. */
  readonly key: string;
  /** The episode it belongs to; null: none, or several. */
  readonly episodeId: string | null;
}

export interface Check {
  /** As in the list of checks; it never changes. */
  readonly number: number;
  /** What holds when nothing is found. */
  readonly title: string;
  readonly severity: 'stop' | 'warn';
  readonly run: (facts: Facts) => readonly Finding[];
}

interface Found {
  readonly message: string;
  readonly fix: string;
  /** The first with an episode decides where the finding is listed. */
  readonly about: readonly (SeriesRecord | undefined)[];
  /** What tells this finding from others of the same check. */
  readonly key: string;
  readonly severity?: 'stop' | 'warn';
}

function episodeOf(records: readonly SeriesRecord[]): string | null {
  for (const record of records) {
    if (record.kind === 'episode') return record.id;
    if ((record.kind === 'task' || record.kind === 'outsideJob' || record.kind === 'segment' || record.kind === 'sponsorship') && record.episodeId !== null) return record.episodeId;
    if (record.kind === 'promise') return record.dueId ?? record.saidInId;
  }
  return null;
}

/** A check from its rule: the rule says what it found, number and weight come from here. */
export function makeCheck(number: number, severity: 'stop' | 'warn', title: string, rule: (facts: Facts) => readonly Found[]): Check {
  return {
    number, severity, title,
    run: (facts) => rule(facts).map((found) => {
      const about = found.about.filter((record) => record !== undefined);
      return {
        ...issue(`check-${number}`, found.message, found.fix, { severity: found.severity ?? severity, subjects: about.map(subjectOf) }),
        check: number, key: found.key, episodeId: episodeOf(about),
      };
    }),
  };
}
