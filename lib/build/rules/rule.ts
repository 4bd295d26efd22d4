/** What every rule of a series is. */
import type { Issue } from '@/lib/result';
import type { SeriesDocument } from '../model';

/** Looks at a whole series and tells everything that breaks it. The first subject of an issue is the record at fault. */
export type Rule = (document: SeriesDocument) => readonly Issue[];
