/** Shape of a kept forecast or variant. Objects are loose: a newer field passes through, a missing one is found. */
import { isRemedyKind, isWhatIfKind, type ForecastResult, type Outlook, type RemedyKind, type Standing, type Variant, type WhatIfKind } from '@/lib/forecast';
import { instant, minutes } from '@/lib/units';
import { z } from 'zod';
import { oneOf } from './column';

export const forecastKinds = oneOf<'forecast' | 'variant'>({ forecast: true, variant: true });

const moment = z.number().transform(instant);

const outlook: z.ZodType<Outlook> = z.looseObject({ percentiles: z.array(moment.nullable()), error: z.number().nullable() });

const share = z.number().min(0).max(1);

export const forecastResult: z.ZodType<ForecastResult> = z.looseObject({
  runs: z.number(), seed: z.number(), time: z.number(), finish: outlook, lastPlanned: moment, beyondPlanned: share,
  episodes: z.array(z.looseObject({ episodeId: z.string(), shootDue: moment, recorded: outlook, chance: share, chanceError: z.number() })),
  threats: z.array(z.looseObject({
    subject: z.looseObject({ kind: oneOf<'task' | 'outsideJob'>({ task: true, outsideJob: true }), id: z.string() }), share, worth: z.number().nullable(),
  })),
  trades: z.array(z.looseObject({ tradeId: z.string(), jobs: z.number(), share, worth: z.number().nullable() })).optional(),
  bank: z.array(z.looseObject({ week: z.string(), p10: z.number(), p50: z.number(), p90: z.number() })),
  lostShots: z.number(), spoiltCoats: z.number(), missedWindows: z.number(), retakes: z.number(), assumptions: z.array(z.string()),
});

const standing: z.ZodType<Standing> = z.looseObject({
  open: z.number(), late: z.number(), lateMinutes: z.number(), slipMinutes: z.number(), unplaced: z.number(), finish: moment,
});

const whatIfKind = z.custom<WhatIfKind>((value) => typeof value === 'string' && isWhatIfKind(value), { error: 'must be a what-if' });
const remedyKind = z.custom<RemedyKind>((value) => typeof value === 'string' && isRemedyKind(value), { error: 'must be a small change' });

export const variantResult: z.ZodType<Variant> = z.looseObject({
  whatIfs: z.array(z.looseObject({ kind: whatIfKind, target: z.string() })),
  remedy: remedyKind.nullable(), words: z.array(z.string()), standing,
  episodes: z.array(z.looseObject({ episodeId: z.string(), shootDue: moment, recordedBy: moment.nullable(), late: z.number().transform(minutes) })),
  summary: z.string(), changes: z.array(z.looseObject({ title: z.string(), text: z.string() })),
});
