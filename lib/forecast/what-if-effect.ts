/** What a what-if does to the plan, and which small changes help most. */
import { listStops, type SeriesDocument } from '@/lib/build';
import { compilePlan, diffPlans, freezeNear, raisePlan, tellContradiction, type PlanDiff, type PlanResult } from '@/lib/plan';
import { fail, ok, type Result } from '@/lib/result';
import { repair } from '@/lib/scheduling';
import { MS_PER_MINUTE, type Instant } from '@/lib/units';
import { listRemedies, makeRemedy, type Remedy, type RemedyKind } from './remedies';
import { applyWhatIfs, type Situation, type WhatIf } from './what-if';

/** How a plan stands: smaller is better, earlier terms first. */
export interface Standing {
  /** Episodes with no full recording in the plan. */
  readonly open: number;
  /** Episodes recorded after their due moment. */
  readonly late: number;
  /** Minutes late, all episodes together. */
  readonly lateMinutes: number;
  /** Minutes by which episodes are recorded later than in the plan that counts, all together. */
  readonly slipMinutes: number;
  readonly unplaced: number;
  readonly finish: Instant;
}

export interface RemedyEffect {
  readonly kind: RemedyKind;
  readonly text: string;
  readonly standing: Standing;
  /** Blocks that move against the plan that counts. */
  readonly moves: number;
  readonly plan: PlanResult;
}

export interface WhatIfEffect {
  readonly words: readonly string[];
  /** The series after it. */
  readonly document: SeriesDocument;
  readonly plan: PlanResult;
  readonly standing: Standing;
  readonly before: Standing | null;
  readonly diff: PlanDiff;
  /** At most three, different in kind, the best first. Empty: nothing is worse than it was, or nothing small helps. */
  readonly remedies: readonly RemedyEffect[];
}

/** How a plan stands, against the one that counts. */
function standingOf(plan: PlanResult, before: PlanResult | null): Standing {
  const was = new Map((before?.episodes ?? []).map((one) => [one.episodeId, one.recordedBy]));
  const slips = plan.episodes.map((one) => (one.recordedBy === null ? 0 : Math.max(0, one.recordedBy - (was.get(one.episodeId) ?? one.recordedBy)) / MS_PER_MINUTE));
  return {
    slipMinutes: slips.reduce((sum, slip) => sum + slip, 0),
    open: plan.episodes.filter((one) => one.recordedBy === null).length,
    late: plan.episodes.filter((one) => one.late > 0).length,
    lateMinutes: plan.episodes.reduce((sum, one) => sum + one.late, 0),
    unplaced: plan.unplaced.length,
    finish: plan.finish,
  };
}

/** Below 0 when `a` is better. */
function compareStanding(a: Standing, b: Standing): number {
  return a.open - b.open || a.unplaced - b.unplaced || a.lateMinutes - b.lateMinutes || a.slipMinutes - b.slipMinutes;
}

interface QuickOptions {
  /** The near days stay where the accepted plan has them, as far as they can. */
  readonly isNearFixed?: boolean;
  /** Changes of the order tried; left out: the usual. */
  readonly moves?: number;
  /** The rules of the build are looked at elsewhere. */
  readonly isUnchecked?: boolean;
}

/** A remedy is rated with fewer tries than what happened: what it brings is told too small rather than too large. */
const REMEDY_MOVES = 0;

/** A quick plan of a changed series that keeps as much as it can of the one that counts. No reasons are worked out. */
function planQuickly(document: SeriesDocument, at: Situation, { isNearFixed = false, isUnchecked = false, moves }: QuickOptions = {}): Result<PlanResult> {
  const stops = isUnchecked ? [] : listStops(document);
  if (stops.length > 0) return fail(stops);
  const previousBlocks = new Map((at.plan?.blocks ?? []).map((block) => [block.id, block]));
  const compiled = compilePlan({ document, now: at.now, previousBlocks, ...(at.readings && { readings: at.readings }) });
  if (!compiled.ok) return compiled;
  const asked = isNearFixed ? freezeNear(compiled.value) : compiled.value;
  const solved = repair(asked.problem, moves);
  if (solved.status === 'infeasible') return fail(tellContradiction(asked, solved.contradiction));
  if (solved.status === 'unknown') throw new Error('The engine built no schedule, although one is always built.');
  return ok(raisePlan(asked, solved, { solveTime: 0, isBare: true }));
}

/** True when something is worse than in the plan that counted, or at all where there was none. What was late already is no news. */
export function isHarmful(standing: Standing, before: Standing | null): boolean {
  if (before === null) return standing.open > 0 || standing.late > 0 || standing.unplaced > 0;
  return compareStanding(standing, before) > 0;
}

const MOST_REMEDIES = 3;

/** A minute after the due moment weighs as much as five that merely slip. Our choice, as in the plan's own objective. */
const harm = ({ lateMinutes, slipMinutes }: Standing): number => 5 * lateMinutes + slipMinutes;

function rateRemedies(at: Situation, document: SeriesDocument, plan: PlanResult): RemedyEffect[] {
  const standing = standingOf(plan, at.plan);
  if (!isHarmful(standing, at.plan === null ? null : standingOf(at.plan, at.plan))) return [];
  const rated = listRemedies({ document, now: at.now, episodes: plan.episodes }).flatMap((remedy: Remedy) => {
    const planned = planQuickly(remedy.document, at, { moves: REMEDY_MOVES, isUnchecked: true });
    if (!planned.ok) return [];
    const after = standingOf(planned.value, at.plan);
    if (compareStanding(after, standing) >= 0) return [];
    const { changes } = diffPlans(at.plan, planned.value, document.series.zone);
    return [{ remedy, effect: { kind: remedy.kind, text: remedy.text, standing: after, moves: changes.length, plan: planned.value } }];
  });
  // What helps is sorted by how little it asks; what brings less than a quarter of the best comes after it.
  const best = rated.reduce((least, { effect }) => Math.min(least, harm(effect.standing)), harm(standing));
  const isStrong = ({ effect }: (typeof rated)[number]) => harm(standing) - harm(effect.standing) >= (harm(standing) - best) / 4;
  const sorted = rated.toSorted((a, b) => Number(isStrong(b)) - Number(isStrong(a)) || a.remedy.size - b.remedy.size || compareStanding(a.effect.standing, b.effect.standing));
  // Only what is offered has to keep the rules of the build.
  const offered: RemedyEffect[] = [];
  for (const { effect, remedy } of sorted) {
    if (offered.length === MOST_REMEDIES) break;
    if (listStops(remedy.document).length === 0) offered.push(effect);
  }
  return offered;
}

/** The effect without the changes that help. */
export type Outcome = Omit<WhatIfEffect, 'remedies'>;

/** What happened, and the change chosen, against the plan that counts. Fails like {@link findEffect}. */
export function findOutcome(at: Situation, whatIfs: readonly WhatIf[], chosen: RemedyKind | null): Result<Outcome> {
  const planned = planAfter(at, whatIfs, chosen);
  if (!planned.ok) return planned;
  const { document, plan, words } = planned.value;
  return ok({ words, document, ...effectOf(at, plan) });
}

/**
 * The effect of what happened, against the plan that counts, with the three smallest changes that help. The accepted plan is not touched.
 * Fails with the reasons of `applyWhatIfs`, with the stops of the changed series or with a contradiction.
 */
export function findEffect(at: Situation, whatIfs: readonly WhatIf[], chosen: RemedyKind | null = null): Result<WhatIfEffect> {
  const planned = planAfter(at, whatIfs, chosen);
  if (!planned.ok) return planned;
  const { document, plan, words } = planned.value;
  return ok({ words, document, ...effectOf(at, plan), remedies: chosen === null ? rateRemedies(at, document, plan) : [] });
}

function planAfter(at: Situation, whatIfs: readonly WhatIf[], chosen: RemedyKind | null): Result<{ readonly document: SeriesDocument; readonly words: readonly string[]; readonly plan: PlanResult }> {
  const happened = changeFor(at, whatIfs, chosen);
  if (!happened.ok) return happened;
  const plan = planQuickly(happened.value.document, at);
  return plan.ok ? ok({ ...happened.value, plan: plan.value }) : plan;
}

type RepairEffect = Omit<Outcome, 'words' | 'document'>;

/** The plan that counts, mended for the series as it is now with as little moved as there can be. Fails like {@link findEffect}. */
export function findRepair(at: Situation): Result<RepairEffect> {
  const plan = planQuickly(at.document, at, { isNearFixed: true });
  return plan.ok ? ok(effectOf(at, plan.value)) : plan;
}

function effectOf(at: Situation, plan: PlanResult): RepairEffect {
  return { plan, standing: standingOf(plan, at.plan), before: at.plan === null ? null : standingOf(at.plan, at.plan), diff: diffPlans(at.plan, plan, at.document.series.zone) };
}

/** The series after what happened and the change that was chosen, with the words for both. */
export function changeFor(at: Situation, whatIfs: readonly WhatIf[], chosen: RemedyKind | null): Result<{ readonly document: SeriesDocument; readonly words: readonly string[] }> {
  const happened = applyWhatIfs(at, whatIfs);
  if (!happened.ok || chosen === null) return happened;
  const first = planQuickly(happened.value.document, at);
  if (!first.ok) return first;
  const remedy = makeRemedy(chosen, { document: happened.value.document, now: at.now, episodes: first.value.episodes });
  if (remedy === null) return happened;
  return ok({ document: remedy.document, words: [...happened.value.words, remedy.text] });
}
