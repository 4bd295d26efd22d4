/** How an outside trade works, and what its process asks of a job. */
import type { Weekday } from '@/lib/calendar';
import type { Instant } from '@/lib/units';

export interface TradeTerms {
  /** Weekdays on which a batch is started. Empty: any open day. */
  readonly batchDays: readonly Weekday[];
  /** Weekdays on which finished work is handed out. Empty: any open day. */
  readonly collectionDays: readonly Weekday[];
  /** Least amount it takes; null: no minimum. */
  readonly minimum: { readonly amount: number | null; readonly unit: string };
  /** Whose public holidays it keeps: ISO 3166 country and region, such as GB and ENG, or BY-A for a region in a region. Empty: none. */
  readonly country: string;
  readonly region: string;
  /** What must be done before drop-off: vent holes, masking. */
  readonly preparations: readonly string[];
  /** Work that must follow the return within so many hours, and what is owed after that; null: none. */
  readonly returnWindow: { readonly hours: number | null; readonly afterwards: string };
}

export interface JobProcess {
  readonly preparations: readonly { readonly name: string; readonly doneAt: Instant | null }[];
  /** In the unit of the trade's minimum. */
  readonly amount: number | null;
  /** When the process itself ended: out of the bath, out of the oven. */
  readonly treatedAt: Instant | null;
  /** When the trade said that it is ready, which may be days before the collection. */
  readonly readyAt: Instant | null;
  /** Quenched or passivated after galvanizing. */
  readonly isQuenched: boolean;
  /** A hollow section and its vent holes, outside measures in mm; null: none, or not known. */
  readonly vents: { readonly width: number | null; readonly height: number | null; readonly diameter: number | null; readonly isDrilledAfter: boolean };
}
