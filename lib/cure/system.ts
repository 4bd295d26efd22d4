/** Several coats as one object: what has to be laid when, and what a missed window costs. */
import type { InstantInterval } from '@/lib/calendar';
import { fail, issue, ok, type Issue, type Result } from '@/lib/result';
import { addMinutes, type Instant } from '@/lib/units';
import { forecastCoat, type CoatClock, type CoatForecast } from './coat';
import type { CoatMaterial, CureStage, LateWork } from './coat-material';
import { longestRecoatWait } from './recoat';

/** One material of a system, in one or more coats. */
export interface SystemStep {
  readonly materialId: string;
  readonly coats: number;
  /** Minutes of work for each coat. */
  readonly work: number;
  /** Between its own coats: in the recoat window, or wet on wet after the flash-off. */
  readonly between: 'recoat' | 'wet on wet';
  /** Abraded before it in any case: then the window before it does not matter, but the coat below must bear handling. */
  readonly isAbradedBefore: boolean;
}

export interface CoatingSystem {
  readonly id: string;
  readonly name: string;
  readonly steps: readonly SystemStep[];
  /** Minutes of work for an abrasion, or for cleaning and a tack coat. */
  readonly lateWorkMinutes: number;
}

/** What ties a coat to the one before it. */
export interface CoatLag {
  readonly after: string;
  /** Shortest wait: until the coat below has reached this stage. */
  readonly stage: CureStage;
  /** Longest wait in minutes for the hottest surface that may come, null: none. Past it, `lateWork`. */
  readonly max: number | null;
  readonly lateWork: LateWork;
}

/** One coat of an unfolded system. */
export interface SystemCoat {
  /** `zinc-1`: stable within the system. */
  readonly key: string;
  readonly material: CoatMaterial;
  readonly index: number;
  readonly work: number;
  /** Abrading that is planned, not a consequence of lateness. */
  readonly isAbradedBefore: boolean;
  readonly lag: CoatLag | null;
}

function checkSystem(system: CoatingSystem, materials: ReadonlyMap<string, CoatMaterial>): Issue[] {
  const issues = system.steps.flatMap((step, index) => {
    const found: Issue[] = [];
    if (!materials.has(step.materialId)) {
      found.push(issue('system-material', `${system.name}: step ${index + 1} names a material that is not in the library.`, 'Choose a material.', { path: ['steps', index, 'materialId'] }));
    }
    if (!(Number.isInteger(step.coats) && step.coats >= 1)) {
      found.push(issue('system-coats', `${system.name}: step ${index + 1} has ${step.coats} coats.`, 'Write a whole number from 1.', { path: ['steps', index, 'coats'] }));
    }
    return found;
  });
  if (system.steps.length === 0) issues.push(issue('system-empty', `${system.name} has no coat.`, 'Add a step.', { path: ['steps'] }));
  return issues;
}

/**
 * The coats of a system one by one, with the lag to the coat before. `hottest` is the warmest surface to be expected: maxima are
 * taken from it, and never stretched. Fails with `system-material`, `system-coats` or `system-empty`.
 */
export function unfoldSystem(system: CoatingSystem, materials: ReadonlyMap<string, CoatMaterial>, hottest: number): Result<readonly SystemCoat[]> {
  const issues = checkSystem(system, materials);
  if (issues.length > 0) return fail(issues);
  const coats: SystemCoat[] = [];
  for (const step of system.steps) {
    const material = materials.get(step.materialId)!;
    for (let own = 0; own < step.coats; own += 1) {
      const before = coats.at(-1);
      const isWet = own > 0 && step.between === 'wet on wet';
      const isAbraded = own === 0 && step.isAbradedBefore;
      const lag: CoatLag | null = before === undefined ? null : {
        after: before.key,
        stage: isWet ? 'flashOff' : isAbraded ? 'handle' : 'recoatFrom',
        max: isAbraded ? null : longestRecoatWait(before.material, hottest),
        lateWork: before.material.lateWork,
      };
      coats.push({ key: `${step.materialId}-${coats.length + 1}`, material, index: coats.length, work: step.work, isAbradedBefore: isAbraded, lag });
    }
  }
  return ok(coats);
}

export interface LaidCoat {
  readonly key: string;
  readonly start: Instant;
  readonly laidAt: Instant;
  /** Work before it: planned abrading, or what the closed window asks for. */
  readonly before: LateWork;
  /** True when the window had closed. */
  readonly isLate: boolean;
  readonly forecast: CoatForecast;
}

/** First moment in the sessions from which a piece of work fits in one go. */
function firstFit(sessions: readonly InstantInterval[], from: Instant, minutes: number): Instant | null {
  for (const { start, end } of sessions) {
    const at = start > from ? start : from;
    if (addMinutes(at, minutes) <= end) return at;
  }
  return null;
}

/**
 * Lays the coats one after the other at the first opportunity in the sessions, abrading where a window has closed. Ends early when
 * the sessions or the climate do; a spoilt coat ends it too, since nothing can go on top of it.
 */
export function layCoats(
  system: CoatingSystem, coats: readonly SystemCoat[], clockOf: (material: CoatMaterial) => CoatClock, sessions: readonly InstantInterval[], from: Instant,
): LaidCoat[] {
  const laid: LaidCoat[] = [];
  let earliest = from;
  for (const coat of coats) {
    const below = laid.at(-1);
    if (below !== undefined) {
      const ready = coat.lag === null ? below.laidAt : below.forecast.reached[coat.lag.stage];
      if (ready === null || below.forecast.isSpoilt) break;
      earliest = ready;
    }
    const planned = coat.isAbradedBefore ? system.lateWorkMinutes : 0;
    const intended = firstFit(sessions, earliest, planned + coat.work);
    if (intended === null) break;
    const closes = below?.forecast.recoatUntil ?? null;
    const lateWork = coat.lag?.lateWork ?? 'none';
    const isLate = !coat.isAbradedBefore && lateWork !== 'none' && closes !== null && intended > closes;
    const extra = isLate ? system.lateWorkMinutes : planned;
    const start = isLate ? firstFit(sessions, earliest, extra + coat.work) : intended;
    if (start === null) break;
    const laidAt = addMinutes(start, extra + coat.work);
    const before = isLate ? lateWork : coat.isAbradedBefore ? 'abrade' : 'none';
    laid.push({ key: coat.key, start, laidAt, before, isLate, forecast: forecastCoat(clockOf(coat.material), laidAt) });
  }
  return laid;
}
