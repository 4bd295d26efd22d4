/** A hazard as the rules of this folder see it: from the library, or written by a user. */
import type { HazardFields } from '@/lib/build';

export type {
  Caution, Control, ControlLevel, Deferral, HazardSeverity, ProtectiveEquipment, Source, SourceStatus, Trigger,
} from '@/lib/build';

export interface Hazard extends HazardFields {
  readonly id: string;
  readonly name: string;
  /** `library`: comes with the program; `own`: written or localised by a user. */
  readonly origin: 'library' | 'own';
}

/** Shown on every page and paper. */
export const STANDING_WORDS =
  "The maker's instructions, local codes and licensed practice come first. This list says what is missing; it cannot say that nothing is.";
