/** Shape of a saved plan's result. Objects are loose: a newer field passes through, a missing one is found. */
import type { Because, BlockKind, CoatStages, EpisodeOutlook, PlanBlock, PlanResult, PlanStatus, UnplacedWork } from '@/lib/plan';
import { instant, minutes } from '@/lib/units';
import { z } from 'zod';
import { oneOf } from './column';
import { goalOrder } from './tables/values';

export const planStatuses = oneOf<PlanStatus>({ draft: true, accepted: true, superseded: true, discarded: true });

const moment = z.number().transform(instant);
const texts = z.array(z.string());

const blockKinds = oneOf<BlockKind>({
  task: true, 'before-shot': true, 'late-work': true, 'drop-off': true, collection: true, away: true, cure: true, shut: true,
});

const subject = z.looseObject({ kind: oneOf<PlanBlock['subject']['kind']>({ task: true, outsideJob: true }), id: z.string() });

const because: z.ZodType<Because> = z.looseObject({
  text: z.string(),
  until: moment.nullable(),
  change: z.string().nullable(),
  blockId: z.string().nullable(),
});

const stages: z.ZodType<CoatStages> = z.looseObject({
  materialId: z.string(),
  touchDry: moment,
  recoatFrom: moment,
  recoatUntil: moment.nullable(),
  handle: moment,
  fullCure: moment,
});

const block: z.ZodType<PlanBlock> = z.looseObject({
  id: z.string(),
  kind: blockKinds,
  subject,
  title: z.string(),
  start: moment,
  end: moment,
  pieces: z.array(z.looseObject({ start: moment, end: moment })),
  placeId: z.string().nullable(),
  crewIds: texts,
  partIds: texts,
  episodeId: z.string().nullable(),
  isPinned: z.boolean(),
  stages: stages.nullable(),
  because: z.array(because),
});

const unplaced: z.ZodType<UnplacedWork> = z.looseObject({ subject, title: z.string(), because: z.array(because) });

const outlook: z.ZodType<EpisodeOutlook> = z.looseObject({
  episodeId: z.string(),
  shootDue: moment,
  recordedBy: moment.nullable(),
  late: z.number().transform(minutes),
});

export const planResult: z.ZodType<PlanResult> = z.looseObject({
  blocks: z.array(block),
  unplaced: z.array(unplaced),
  episodes: z.array(outlook),
  goals: z.object({ order: goalOrder, bankWeeks: z.number(), changes: z.number(), heating: z.number().nullable() }).optional(),
  status: oneOf<PlanResult['status']>({ optimal: true, feasible: true }),
  finish: moment,
  earliestFinish: moment,
  schedulesTried: z.number(),
  seed: z.number(),
  solveTime: z.number(),
  from: z.string(),
  to: z.string(),
});
