/** Shapes of what is kept about hazards as JSON in a row. */
import {
  isHazardFact, NO_ROOM_AIR, NO_TASK_HAZARDS, NO_TOOL_EXPOSURE, NO_VAPOUR,
  type Consent, type CutChecks, type Evidence, type HazardFact, type HazardFields, type MaterialVapour, type RoomAir, type SourceReading, type SourceStatus, type StatementAbout, type TaskHazards, type ToolExposure,
} from '@/lib/build';
import { z } from 'zod';
import { oneOf, readJson } from '../column';
import type { Cell } from '../column';

const fact = z.custom<HazardFact>((value) => typeof value === 'string' && isHazardFact(value), { error: 'is no hazard fact' });
const departure = z.object({ manualValue: z.string(), ownValue: z.string(), reason: z.string(), warning: z.string() });
const taskHazards: z.ZodType<TaskHazards> = z.object({
  facts: z.array(fact), toolShare: z.number(), sprayed: z.number().nullable(), departure: departure.nullable(),
});
const toolExposure: z.ZodType<ToolExposure> = z.object({ noise: z.number().nullable(), vibration: z.number().nullable(), source: z.string() });
const roomAir: z.ZodType<RoomAir> = z.object({ volume: z.number().nullable(), airChanges: z.number().nullable(), source: z.string() });
const vapour: z.ZodType<MaterialVapour> = z.object({
  density: z.number().nullable(), molarMass: z.number().nullable(), solventShare: z.number().nullable(), limit: z.number().nullable(), source: z.string(),
});

/** A column that rows written before it existed leave empty. */
function readOr<T>(schema: z.ZodType<T>, text: string | null, otherwise: T, cell: Cell): T {
  return text === null ? otherwise : readJson(schema, text, cell);
}

export const readTaskHazards = (text: string | null, cell: Cell): TaskHazards => readOr(taskHazards, text, NO_TASK_HAZARDS, cell);
export const readToolExposure = (text: string | null, cell: Cell): ToolExposure => readOr(toolExposure, text, NO_TOOL_EXPOSURE, cell);
export const readRoomAir = (text: string | null, cell: Cell): RoomAir => readOr(roomAir, text, NO_ROOM_AIR, cell);
export const readVapour = (text: string | null, cell: Cell): MaterialVapour => readOr(vapour, text, NO_VAPOUR, cell);

export const consentShape: z.ZodType<Consent> = z.object({ givenOn: z.string().nullable(), until: z.string().nullable(), where: z.string() });
export const cutChecksShape: z.ZodType<CutChecks> = z.object({
  captions: z.object({ file: z.string(), readOn: z.string().nullable() }),
  flashes: z.object({ perSecond: z.number().nullable(), remedy: z.string(), countedOn: z.string().nullable() }),
});

export const sourceReadings: z.ZodType<readonly SourceReading[]> = z.array(z.object({ text: z.string(), on: z.string(), by: z.string() }));

const status = oneOf<SourceStatus>({ read: true, memory: true, computed: true, judgement: true, practice: true });
const trigger = z.array(z.array(fact));

export const hazardFields: z.ZodType<HazardFields> = z.object({
  severity: oneOf<HazardFields['severity']>({ I: true, II: true, III: true, IV: true }),
  trigger,
  controls: z.array(z.object({
    id: z.string(), level: oneOf<HazardFields['controls'][number]['level']>({ eliminate: true, substitute: true, engineer: true, administer: true }),
    text: z.string(), isShown: z.boolean(),
  })),
  equipment: z.array(z.object({ id: z.string(), text: z.string(), sign: z.string().nullable(), standard: z.string(), standardStatus: status })),
  signs: z.array(z.string()),
  caution: z.object({ screen: z.string(), spoken: z.string() }),
  show: z.string(),
  deferral: z.object({ text: z.string(), when: z.union([trigger, z.literal('always')]) }).nullable(),
  needsSecondPerson: z.boolean(),
  sources: z.array(z.object({ text: z.string(), status, reviewed: z.string().nullable() })),
  replaces: z.string().nullable(),
});

const evidence: z.ZodType<Evidence> = z.discriminatedUnion('kind', [
  z.object({ kind: z.literal('take'), take: z.string(), timecode: z.string(), entryId: z.string().optional() }), z.object({ kind: z.literal('exception') }), z.object({ kind: z.literal('withdrawn') }),
]);

export const statementAbout: z.ZodType<StatementAbout> = z.discriminatedUnion('sort', [
  z.object({ sort: z.literal(['hazard-added', 'hazard-removed']), taskId: z.string(), hazardId: z.string() }),
  z.object({ sort: z.literal('evidence'), episodeId: z.string(), itemId: z.string(), fingerprint: z.string(), evidence }),
  z.object({ sort: z.literal('override'), episodeId: z.string(), status: z.literal(['cleared', 'released']), blocks: z.array(z.string()) }),
]);
