/** What a trade's process asks for before the part leaves, and soon after it is back. */
import { formatMoment } from '@/lib/calendar';
import { issue, type Issue } from '@/lib/result';
import { addMinutes, type Instant } from '@/lib/units';

/** A hollow section, outside measures in mm. */
export interface HollowSection {
  readonly width: number;
  readonly height: number;
}

export interface VentHoles {
  /** mm */
  readonly diameter: number;
  readonly drilled: 'before' | 'after';
}

/** Smallest vent or drain hole in mm: 10, and a quarter of the diagonal of the section. Galvanizers' association. */
function leastVentHole({ width, height }: HollowSection): number {
  return Math.max(10, 0.25 * Math.hypot(width, height));
}

/** A closed section bursts in the bath: `vent-after-galvanizing`, `vent-too-small`. */
export function checkVentHoles(part: string, section: HollowSection, holes: VentHoles): Issue[] {
  const issues: Issue[] = [];
  const least = leastVentHole(section);
  if (holes.drilled === 'after') {
    const message = `${part}: vent holes drilled after galvanizing come too late, and leave bare steel.`;
    issues.push(issue('vent-after-galvanizing', message, 'Drill them before drop-off.', { path: ['drilled'] }));
  }
  if (holes.diameter < least) {
    const message = `${part}: vent holes of ${holes.diameter} mm are too small for ${section.width} x ${section.height} mm.`;
    issues.push(issue('vent-too-small', message, `Drill at least ${Math.ceil(least)} mm.`, { path: ['diameter'] }));
  }
  return issues;
}

export type GalvanizedPreparation = 'paint as it is' | 'clean and profile' | 'clean';

const NEW_HOURS = 48;
const WEATHERED_HOURS = 365 * 24;

/**
 * Preparation of galvanised steel for paint by its age in hours: within 48 h as it is, unless quenched or passivated; to a year
 * clean and profile; weathered, clean only. State DOT memo, galvanizers' association.
 */
export function galvanizedPreparation(ageHours: number, isQuenched: boolean): GalvanizedPreparation {
  if (ageHours > WEATHERED_HOURS) return 'clean';
  return ageHours <= NEW_HOURS && !isQuenched ? 'paint as it is' : 'clean and profile';
}

/** Something to be done before a part leaves. */
export interface Preparation {
  readonly name: string;
  /** null: not done, not planned. */
  readonly doneAt: Instant | null;
}

/** Preparations that are missing or come after the drop-off: `preparation-missing`, `preparation-late`. */
export function checkPreparations(job: string, steps: readonly Preparation[], droppedOff: Instant, zone: string): Issue[] {
  return steps.flatMap((step, index) => {
    const path = { path: ['preparations', index] };
    if (step.doneAt === null) {
      return [issue('preparation-missing', `${job}: "${step.name}" is not planned before drop-off on ${formatMoment(droppedOff, zone)}.`, 'Plan it before the trip.', path)];
    }
    if (step.doneAt <= droppedOff) return [];
    const message = `${job}: "${step.name}" ends on ${formatMoment(step.doneAt, zone)}, after drop-off on ${formatMoment(droppedOff, zone)}.`;
    return [issue('preparation-late', message, 'Move it before the trip, or the trip after it.', path)];
  });
}

/** The end of a window that opens when a part is back, and what is owed after it. */
export interface ReturnWindow {
  /** Hours from the process's end (or the return, when that is not known). */
  readonly hours: number;
  /** What must be done first once it has closed. */
  readonly afterwards: string;
}

export interface WindowState {
  readonly closesAt: Instant;
  readonly isMissed: boolean;
  readonly issues: readonly Issue[];
}

/** Whether painting starts within the window after a return. Missed: a warning with what is owed instead. */
export function checkReturnWindow(job: string, window: ReturnWindow, treatedAt: Instant, paintingAt: Instant, zone: string): WindowState {
  const closesAt = addMinutes(treatedAt, window.hours * 60);
  const isMissed = paintingAt > closesAt;
  if (!isMissed) return { closesAt, isMissed, issues: [] };
  const message = `${job}: painting starts on ${formatMoment(paintingAt, zone)}, after its window closed on ${formatMoment(closesAt, zone)}.`;
  const found = issue('return-window-missed', message, `First: ${window.afterwards}. Or paint before ${formatMoment(closesAt, zone)}.`, { severity: 'warn' });
  return { closesAt, isMissed, issues: [found] };
}

/** What a trade takes at least, in its own unit. */
export interface MinimumBatch {
  readonly amount: number;
  readonly unit: string;
}

/** Less than the minimum: `batch-too-small`, a warning. */
export function checkBatch(trade: string, minimum: MinimumBatch | null, amount: number): Issue[] {
  if (minimum === null || amount >= minimum.amount) return [];
  const message = `${trade} takes ${minimum.amount} ${minimum.unit} at least; this job has ${amount} ${minimum.unit}.`;
  return [issue('batch-too-small', message, `Add ${minimum.amount - amount} ${minimum.unit} of other parts, or pay for the minimum.`, { severity: 'warn' })];
}
