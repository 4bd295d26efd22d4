/** Shapes of the values that are kept as JSON in a row. */
import type { CameraKit, Coverage, DateSpan, FilmingPractice, PartState, PlanGoal, Shot, SkillNeed, WeeklyHours } from '@/lib/build';
import { instant, minutes } from '@/lib/units';
import { z } from 'zod';
import { oneOf } from '../column';

export const texts: z.ZodType<readonly string[]> = z.array(z.string());

const weekday = z.union([z.literal(1), z.literal(2), z.literal(3), z.literal(4), z.literal(5), z.literal(6), z.literal(7)]);

export const weeklyHours: z.ZodType<readonly WeeklyHours[]> = z.array(z.object({ weekday, from: z.string(), to: z.string() }));

export const dateSpans: z.ZodType<readonly DateSpan[]> = z.array(z.object({ from: z.string(), to: z.string(), why: z.string() }));

export const coverages = oneOf<Coverage>({
  none: true, 'locked-off': true, 'moved camera': true, 'inserts and teaching': true, 'piece to camera': true, 'time-lapse': true, montage: true,
});

export const filmingPractice: z.ZodType<FilmingPractice> = z.object({
  position: z.number(), shot: z.number(), take: z.number(), reset: z.number(), retakeChance: z.number(), oneWay: z.number(), packUp: z.number(),
  own: z.array(z.object({ coverage: coverages, positions: z.number(), positionsPerHour: z.number(), shots: z.number(), shotsPerHour: z.number() })).default([]),
});

export const cameraKit: z.ZodType<CameraKit> = z.object({
  cameras: z.number(), bitRate: z.number(), cards: z.array(z.number()), batteries: z.number(), batteryMinutes: z.number(), fillLimit: z.number(),
});

export const goalOrder: z.ZodType<readonly PlanGoal[]> = z.array(oneOf<PlanGoal>({ lateness: true, bank: true, changes: true, finish: true, heating: true }));

export const partStates: z.ZodType<readonly PartState[]> = z.array(z.object({ id: z.string(), name: z.string() }));

export const skillNeeds: z.ZodType<readonly SkillNeed[]> = z.array(z.object({ skill: z.string().nullable(), count: z.number() }));

export const shots: z.ZodType<readonly Shot[]> = z.array(
  z.object({
    id: z.string(),
    name: z.string(),
    purpose: oneOf<Shot['purpose']>({
      before: true, during: true, after: true, insert: true, 'piece to camera': true, 'time-lapse': true, pickup: true,
    }),
    time: z.number().transform(minutes),
    mustHave: z.boolean(),
    filmedAt: z.number().transform(instant).nullable().default(null),
    states: z.array(z.object({ partId: z.string(), stateId: z.string() })).optional(),
  }),
);
