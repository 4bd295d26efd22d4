/** Words that several pages of safety use. */
import type { SeriesDocument, Source, SourceReading, Statement, Task } from '@/lib/build';
import { formatDay, formatMoment } from '@/lib/calendar';
import { datedWork } from '@/lib/plan';
import type { Issue } from '@/lib/result';
import { gatherFootage, readSign, vapourOfTask, type PersonDay } from '@/lib/safety';
import type { ViewContext } from './context';
import type { ExposureRow, SafetyChoice, SignLine, SourceLine, VapourRow } from './safety-model';

/** What the pages of safety read besides the series. */
export interface SafetyContext {
  readonly storage: Pick<ViewContext['storage'], 'acceptedPlan' | 'listLogEntries'>;
  readonly now: ViewContext['now'];
}

/** The accepted plan and the log, as the rules of safety see them. */
export async function loadScene(storage: SafetyContext['storage'], seriesId: string) {
  const [plan, entries] = await Promise.all([storage.acceptedPlan(seriesId), storage.listLogEntries(seriesId, {})]);
  return { plan, work: datedWork(plan?.result ?? null), footage: gatherFootage(entries) };
}

export const chooseFrom = (records: readonly { readonly id: string; readonly name: string }[]): readonly SafetyChoice[] => records.map(({ id, name }) => ({ value: id, label: name }));

export function saySigns(codes: readonly string[]): readonly SignLine[] {
  return [...new Set(codes)].flatMap((code) => {
    const sign = readSign(code);
    return sign.ok ? [{ code, meaning: sign.value.status === 'memory' ? `${sign.value.meaning} (unverified)` : sign.value.meaning }] : [];
  });
}

/** @param reading the last one by somebody of the series; null: none */
export function saySource({ text, status, reviewed }: Source, reading: SourceReading | null): SourceLine {
  if (reading !== null && (status === 'read' || status === 'memory') && reading.on > (reviewed ?? '')) return { text, status: `read ${reading.on} by ${reading.by}`, isUnverified: false };
  const words = { read: `read ${reviewed ?? ''}`, memory: 'unverified, from memory', computed: 'computed', judgement: 'our judgement', practice: 'common practice, no source' } as const;
  return { text, status: words[status], isUnverified: status === 'memory' || status === 'practice' };
}

/** `Marta, Tue 1 Dec 20:00: cam A 12 at 00:12:04:11`. */
export function saySignature({ about, signedBy, at, reason }: Statement, zone: string): string {
  const who = `${signedBy}, ${formatMoment(at, zone)}`;
  if (about.sort !== 'evidence') return `${who}: ${reason}`;
  if (about.evidence.kind === 'take') return `${who}: ${about.evidence.take} at ${about.evidence.timecode}${reason === '' ? '' : `. ${reason}`}`;
  return `${who}: ${about.evidence.kind === 'exception' ? 'exception' : 'taken back'}. ${reason}`;
}

const TONES = ['below', 'action', 'limit', 'over'] as const;
const ADVICE = {
  below: 'below the action values', action: 'above an action value: protection on, think of a quieter way', limit: 'close to the limit: protection worn, nothing more of it that day',
  over: 'over the limit, counted at the ear and without protection: share it out, or spread it over days',
} as const;

/** Half of the limit asks for a mask and more air. Judgement. */
const VAPOUR_ACTION = 0.5;

function judgeVapour({ vapour }: PersonDay): (typeof TONES)[number] {
  if (vapour > 1) return 'over';
  return vapour >= VAPOUR_ACTION ? 'action' : 'below';
}

/** Some action value is reached, or a tool has no figure. */
export const isWorthTelling = (day: PersonDay): boolean => day.noiseLevel !== 'below' || day.vibrationLevel !== 'below' || judgeVapour(day) !== 'below' || day.unknownTools.length > 0;

/** A person's day in words. */
export function sayExposure(document: SeriesDocument, day: PersonDay): ExposureRow {
  const { noise, vibration } = day;
  const worst = [day.noiseLevel, day.vibrationLevel, judgeVapour(day)].toSorted((a, b) => TONES.indexOf(b) - TONES.indexOf(a))[0] ?? 'below';
  const level = noise.dailyLevel === null ? 'none counted' : `${noise.dailyLevel.toFixed(1)} dB(A) daily level; OSHA ${noise.oshaDose.toFixed(0)} %, NIOSH ${noise.nioshDose.toFixed(0)} %`;
  return {
    key: `${day.date} ${day.personId}`, day: formatDay(day.date), person: document.people.find(({ id }) => id === day.personId)?.name ?? 'somebody', noise: level,
    vibration: vibration.points === 0 ? 'none counted' : `${vibration.points.toFixed(0)} points, A(8) ${vibration.dailyValue.toFixed(1)} m/s²`,
    vapour: day.vapour === 0 ? 'none counted' : `${(day.vapour * 100).toFixed(0)} % of eight hours at the limit, without a mask`,
    tone: worst, advice: ADVICE[worst], unknown: day.unknownTools.length === 0 ? null : `No figure for ${day.unknownTools.join(', ')}`,
  };
}

/** Vapour of a task in words, or what is missing to say it. */
export function sayVapour(document: SeriesDocument, task: Task): { readonly row: VapourRow | null; readonly gaps: readonly Issue[] } {
  const vapour = vapourOfTask(document, task);
  if (vapour === null) return { row: null, gaps: [] };
  if (!vapour.ok) return { row: null, gaps: vapour.error };
  const { peak, limit, belowLimitAfter, material } = vapour.value;
  const after = belowLimitAfter === null ? 'it does not clear: no air moves' : belowLimitAfter === 0 ? 'below the limit throughout' : `below the limit ${Math.ceil(belowLimitAfter)} min after spraying`;
  return { row: { taskId: task.id, name: task.name, isOver: peak > limit, text: `${material.name}: up to ${peak.toFixed(0)} ppm against a limit of ${limit} ppm, ${after}. A planning figure; it measures nothing.` }, gaps: [] };
}

export const SEVERITY_WORDS = { I: 'I catastrophic', II: 'II critical', III: 'III marginal', IV: 'IV negligible' } as const;
