/** The what-if page: the ten as buttons, and what the chosen ones do to the plan. Nothing is saved. */
import type { SeriesDocument } from '@/lib/build';
import { formatLength, formatMoment } from '@/lib/calendar';
import {
  findEffect, findTarget, isHarmful, isRemedyKind, isWhatIfKind, listSizes, WHAT_IF_KINDS, WHAT_IFS, type SavedForecast, type Situation, type Standing, type WhatIf, type WhatIfKind,
} from '@/lib/forecast';
import { closeOnHolidays } from '@/lib/exchange';
import { openPlan, type EpisodeOutlook, type PlanDiff } from '@/lib/plan';
import type { Issue } from '@/lib/result';
import { minutesBetween, type Instant } from '@/lib/units';
import type { ViewContext } from './context';
import { drawMoves, type MovedStrip } from './moved-strip';
import { linkRecord } from './week-block';
import type { RecordLink } from './week-model';
import { tellBank } from './what-if-bank';
import { loadReadings } from './workshop-air';
import { formatCount } from './week-words';

export interface WhatIfChoice {
  readonly kind: WhatIfKind;
  readonly title: string;
  /** What it may happen to, the likeliest first. Empty: it cannot happen; `nothing` says why. */
  readonly targets: readonly { readonly id: string; readonly name: string }[];
  readonly nothing: string;
}

export interface EpisodeShift {
  readonly episode: RecordLink;
  readonly text: string;
  readonly outlook: string;
  readonly isLate: boolean;
}

export interface RemedyView {
  readonly kind: string;
  readonly text: string;
  readonly result: string;
  readonly moves: string;
}

/** Two sentences about one thing: by the plan that counts, and after what happened. */
interface Compared {
  readonly before: string;
  readonly after: string;
}

export interface EffectView extends Compared {
  readonly words: readonly string[];
  readonly summary: string;
  /** Finished episodes in hand by week. */
  readonly bank: Compared;
  readonly isWorse: boolean;
  readonly episodes: readonly EpisodeShift[];
  readonly changes: readonly { readonly key: string; readonly title: string; readonly kind: PlanDiff['changes'][number]['kind']; readonly text: string }[];
  readonly remedies: readonly RemedyView[];
  /** The first week in which work moves; null: nothing moves. */
  readonly strip: MovedStrip | null;
}

export interface VariantView {
  readonly number: number;
  readonly name: string;
  readonly planNumber: number;
  readonly madeAt: string;
  readonly words: readonly string[];
  readonly result: string;
  readonly bank: string;
  readonly summary: string;
  readonly episodes: readonly { readonly id: string; readonly name: string; readonly recorded: string; readonly isLate: boolean }[];
  readonly changes: readonly { readonly title: string; readonly text: string }[];
}

export interface WhatIfView {
  readonly seriesId: string;
  readonly hasPlan: boolean;
  readonly choices: readonly WhatIfChoice[];
  readonly chosen: readonly { readonly kind: WhatIfKind; readonly target: string; readonly title: string; readonly targetName: string; readonly sizes: readonly { readonly id: string; readonly name: string }[] }[];
  readonly remedy: string | null;
  readonly effect: EffectView | null;
  readonly issues: readonly Issue[];
  readonly variants: readonly VariantView[];
}

function tellStanding({ late, lateMinutes, open, slipMinutes, unplaced }: Standing): string {
  const words = [
    late > 0 ? `${formatCount(late, 'episode')} late, ${formatLength(lateMinutes)} together` : '',
    open > 0 ? `${formatCount(open, 'episode')} without a full recording` : '',
    unplaced > 0 ? `${formatCount(unplaced, 'piece')} of work without a place` : '',
  ].filter((word) => word !== '');
  const slip = slipMinutes > 0 ? ` Recordings slip ${formatLength(slipMinutes)} in all.` : '';
  return `${words.length === 0 ? 'No episode is late' : words.join('; ')}.${slip}`;
}

function tellSpare(outlook: EpisodeOutlook | undefined): { text: string; isLate: boolean } {
  if (outlook === undefined || outlook.recordedBy === null) return { text: 'no date', isLate: true };
  if (outlook.late > 0) return { text: `${formatLength(outlook.late)} late`, isLate: true };
  return { text: `${formatLength(minutesBetween(outlook.recordedBy, outlook.shootDue))} to spare`, isLate: false };
}

function showShifts(diff: PlanDiff, episodes: readonly EpisodeOutlook[], document: SeriesDocument): EpisodeShift[] {
  const { zone } = document.series;
  return diff.episodes.filter((one) => one.shift !== 0 || one.after === null).map((one) => {
    const { isLate, text: outlook } = tellSpare(episodes.find((episode) => episode.episodeId === one.episodeId));
    const text = one.after === null ? 'some of its work has no place'
      : one.shift === null ? `recorded ${formatMoment(one.after, zone)}`
        : `recorded ${formatMoment(one.after, zone)}, ${formatLength(Math.abs(one.shift))} ${one.shift > 0 ? 'later' : 'earlier'}`;
    return { episode: linkRecord('episode', one.episodeId, document.episodes), text, outlook, isLate };
  });
}

function showVariant(saved: Extract<SavedForecast, { kind: 'variant' }>, document: SeriesDocument, now: Instant): VariantView {
  const { zone } = document.series;
  const { variant } = saved;
  return {
    number: saved.number, name: saved.name, planNumber: saved.planNumber, madeAt: formatMoment(saved.madeAt, zone), words: variant.words, result: tellStanding(variant.standing), bank: tellBank(document, variant.episodes, now), summary: variant.summary,
    episodes: variant.episodes.map((one) => ({
      id: one.episodeId, name: linkRecord('episode', one.episodeId, document.episodes).name, recorded: one.recordedBy === null ? 'no date' : formatMoment(one.recordedBy, zone), isLate: one.recordedBy === null || one.late > 0,
    })),
    changes: variant.changes,
  };
}

/** What is asked for in an address: `kind:target` pieces, and the change chosen. Unknown words are left out. */
export interface WhatIfQuery {
  readonly whatIfs: readonly string[];
  readonly remedy: string | null;
}

function readWhatIfs(pieces: readonly string[]): WhatIf[] {
  return pieces.flatMap((piece) => {
    const at = piece.indexOf(':');
    const kind = at < 0 ? piece : piece.slice(0, at);
    return isWhatIfKind(kind) ? [{ kind, target: at < 0 ? '' : piece.slice(at + 1) }] : [];
  });
}

function showEffect(at: Situation, whatIfs: readonly WhatIf[], remedy: string | null): { effect: EffectView | null; issues: readonly Issue[] } {
  const found = findEffect(at, whatIfs, remedy !== null && isRemedyKind(remedy) ? remedy : null);
  if (!found.ok) return { effect: null, issues: found.error };
  const { before, diff, document, plan, remedies, standing, words } = found.value;
  return {
    issues: [],
    effect: {
      words, summary: diff.summary, before: before === null ? 'There is no accepted plan to compare with.' : tellStanding(before), after: tellStanding(standing),
      isWorse: isHarmful(standing, before),
      bank: { before: at.plan === null ? '' : tellBank(at.document, at.plan.episodes, at.now), after: tellBank(at.document, plan.episodes, at.now) },
      strip: at.plan === null ? null : drawMoves(document, at.plan, plan),
      episodes: showShifts(diff, plan.episodes, at.document),
      changes: diff.changes.map((change) => ({ key: change.blockId, title: change.title, kind: change.kind, text: change.text })),
      remedies: remedies.map((one) => ({ kind: one.kind, text: one.text, result: tellStanding(one.standing), moves: `${formatCount(one.moves, 'block')} move against the plan` })),
    },
  };
}

/** The choices, the effect of those chosen, and the variants kept. */
export async function viewWhatIf({ storage, now }: ViewContext, document: SeriesDocument, query: WhatIfQuery): Promise<WhatIfView> {
  const { id } = document.series;
  const [accepted, kept] = await Promise.all([storage.acceptedPlan(id), storage.listForecasts(id, 'variant', 20)]);
  const whatIfs = readWhatIfs(query.whatIfs);
  // Holidays and readings count for a plan, not for what may be chosen.
  const weighed = whatIfs.length === 0 ? { document } : { document: await closeOnHolidays(document, now), readings: await loadReadings(storage, document) };
  const at: Situation = { ...weighed, plan: accepted === null ? null : openPlan(document, accepted.result), now };
  const { effect, issues } = whatIfs.length === 0 || accepted === null ? { effect: null, issues: [] } : showEffect(at, whatIfs, query.remedy);
  return {
    seriesId: id, hasPlan: accepted !== null, issues, effect,
    choices: WHAT_IF_KINDS.map((kind) => ({ kind, title: WHAT_IFS[kind].title, nothing: WHAT_IFS[kind].nothing, targets: WHAT_IFS[kind].targets(at).slice(0, 40) })),
    chosen: whatIfs.map((one) => {
      const target = findTarget(at, one);
      return { kind: one.kind, target: target?.id ?? one.target, title: WHAT_IFS[one.kind].title, targetName: target?.name ?? '', sizes: listSizes({ kind: one.kind, target: target?.id ?? one.target }) };
    }),
    remedy: query.remedy !== null && isRemedyKind(query.remedy) ? query.remedy : null,
    variants: kept.filter((one) => one.kind === 'variant').map((one) => showVariant(one, document, now)),
  };
}
