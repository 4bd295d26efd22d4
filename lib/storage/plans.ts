/** Saved plans: numbered within their series, at most one draft and one accepted at a time. */
import type { PlanResult, PlanStatus, SavedPlan } from '@/lib/plan';
import { issue } from '@/lib/result';
import type { Instant } from '@/lib/units';
import { readInstant, readJson, readOptionalInstant, readValue, writeInstant } from './column';
import type { Db } from './connection';
import type { PlanModel } from './generated/models';
import { planResult, planStatuses } from './plan-result';
import { noSuchSeries, Refusal } from './refusal';

/** A plan without its blocks, for lists. */
export interface PlanSummary extends Omit<SavedPlan, 'result'> {
  readonly finish: Instant;
  readonly blockCount: number;
  readonly unplacedCount: number;
}

/** A plan to be saved. */
export interface NewPlan {
  readonly result: PlanResult;
  /** Change number of the document it was made from. */
  readonly basedOnChange: number;
  readonly madeAt: Instant;
}

/** Who accepted a plan, and why; null: not said. */
export interface Acceptance {
  readonly by: string | null;
  readonly why: string | null;
}

const UNSAID: Acceptance = { by: null, why: null };

type SummaryRow = Omit<PlanModel, 'resultJson'>;

const SUMMARY_COLUMNS = {
  seriesId: true, number: true, status: true, madeAt: true, acceptedAt: true, acceptedBy: true, acceptedWhy: true, basedOnChange: true, finish: true, blockCount: true,
  unplacedCount: true,
} as const;

/**
 * Saves a plan as the draft of its series; the draft before it, if nobody accepted it, is discarded.
 * @throws Refusal when the series is gone
 */
export async function insertPlan(db: Db, seriesId: string, { result, basedOnChange, madeAt }: NewPlan): Promise<SavedPlan> {
  // The write comes first, so that two plans saved at once do not read the same last number.
  await db.plan.updateMany({ where: { seriesId, status: 'draft' }, data: { status: 'discarded' } });
  const series = await db.series.findUnique({ where: { id: seriesId }, select: { id: true } });
  if (!series) throw new Refusal([noSuchSeries(seriesId)]);
  const last = await db.plan.findFirst({ where: { seriesId }, orderBy: { number: 'desc' }, select: { number: true } });
  const row = {
    seriesId,
    number: (last?.number ?? 0) + 1,
    status: 'draft',
    madeAt: writeInstant(madeAt),
    acceptedAt: null,
    acceptedBy: null,
    acceptedWhy: null,
    basedOnChange,
    finish: writeInstant(result.finish),
    blockCount: result.blocks.length,
    unplacedCount: result.unplaced.length,
    resultJson: JSON.stringify(result),
  };
  await db.plan.create({ data: row });
  return readPlan(row);
}

export async function findPlan(db: Db, seriesId: string, number: number): Promise<SavedPlan | null> {
  const row = await db.plan.findUnique({ where: { seriesId_number: { seriesId, number } } });
  return row ? readPlan(row) : null;
}

/** The newest plan of a status. */
export async function findLatest(db: Db, seriesId: string, status: PlanStatus): Promise<SavedPlan | null> {
  const row = await db.plan.findFirst({ where: { seriesId, status }, orderBy: { number: 'desc' } });
  return row ? readPlan(row) : null;
}

/** All plans of a series, newest first. */
export async function listPlans(db: Db, seriesId: string): Promise<readonly PlanSummary[]> {
  const rows = await db.plan.findMany({ where: { seriesId }, orderBy: { number: 'desc' }, select: SUMMARY_COLUMNS });
  return rows.map((row) => ({
    ...readHead(row),
    finish: readInstant(row.finish),
    blockCount: row.blockCount,
    unplacedCount: row.unplacedCount,
  }));
}

/**
 * Gives a plan another status. Accepting one supersedes the one accepted before.
 * @param at when; kept for an accepted plan, as is what was said about it
 * @throws Refusal when there is no such plan
 */
export async function updatePlanStatus(db: Db, seriesId: string, number: number, status: PlanStatus, at: Instant, said: Acceptance = UNSAID): Promise<SavedPlan> {
  const accepted = status === 'accepted';
  if (accepted) {
    await db.plan.updateMany({ where: { seriesId, status: 'accepted', number: { not: number } }, data: { status: 'superseded' } });
  }
  const data = accepted ? { status, acceptedAt: writeInstant(at), acceptedBy: said.by, acceptedWhy: said.why } : { status };
  const { count } = await db.plan.updateMany({ where: { seriesId, number }, data });
  if (count === 0) throw new Refusal([issue('no-such-plan', `There is no plan ${number} of this series.`, 'Go back to the list of plans.')]);
  return readPlan(await db.plan.findUniqueOrThrow({ where: { seriesId_number: { seriesId, number } } }));
}

function readHead(row: SummaryRow): Omit<SavedPlan, 'result'> {
  return {
    id: `${row.seriesId}:${row.number}`,
    number: row.number,
    status: readValue(planStatuses, row.status, { table: 'Plan', row: String(row.number), column: 'status' }),
    madeAt: readInstant(row.madeAt),
    acceptedAt: readOptionalInstant(row.acceptedAt),
    ...(row.acceptedBy !== null && { acceptedBy: row.acceptedBy }),
    ...(row.acceptedWhy !== null && { acceptedWhy: row.acceptedWhy }),
    basedOnChange: row.basedOnChange,
  };
}

function readPlan(row: PlanModel): SavedPlan {
  return {
    ...readHead(row),
    result: readJson(planResult, row.resultJson, { table: 'Plan', row: String(row.number), column: 'resultJson' }),
  };
}
