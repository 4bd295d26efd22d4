/** The risk matrix of MIL-STD-882E, Table III (read in transcriptions). Ordinal: cells are never added or averaged. */
import { fail, issue, ok, type Result } from '@/lib/result';
import type { ControlLevel, HazardSeverity } from './model';

/** A frequent, B probable, C occasional, D remote, E improbable, F eliminated. */
export type Probability = 'A' | 'B' | 'C' | 'D' | 'E' | 'F';
export type RiskLevel = 'High' | 'Serious' | 'Medium' | 'Low' | 'Eliminated';

const ROWS: Readonly<Record<Exclude<Probability, 'F'>, Readonly<Record<HazardSeverity, RiskLevel>>>> = {
  A: { I: 'High', II: 'High', III: 'Serious', IV: 'Medium' },
  B: { I: 'High', II: 'High', III: 'Serious', IV: 'Medium' },
  C: { I: 'High', II: 'Serious', III: 'Medium', IV: 'Low' },
  D: { I: 'Serious', II: 'Medium', III: 'Medium', IV: 'Low' },
  E: { I: 'Medium', II: 'Medium', III: 'Medium', IV: 'Low' },
};

/**
 * The cell of the matrix. F is given only where the hazard itself is gone: fails with `risk-not-eliminated`
 * when what was done is a warning, a habit, a guard or something worn.
 * @param done best control in place; `worn` for protective equipment alone
 */
export function assessRisk(severity: HazardSeverity, probability: Probability, done: ControlLevel | 'worn'): Result<RiskLevel> {
  if (probability !== 'F') return ok(ROWS[probability][severity]);
  if (done === 'eliminate') return ok('Eliminated');
  return fail([issue('risk-not-eliminated', 'The risk cannot be called eliminated: training, warnings, guards and protective equipment leave the hazard where it is.', 'Take the hazard away, or choose E (improbable).')]);
}
