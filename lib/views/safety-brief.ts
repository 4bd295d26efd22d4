/** The brief of a session: one page, printable. */
import { attendanceOf, findRecord, type SeriesDocument, type Session, type Task } from '@/lib/build';
import { formatMoment } from '@/lib/calendar';
import { datedWork } from '@/lib/plan';
import { briefSession, STANDING_WORDS } from '@/lib/safety';
import type { BriefView } from './safety-model';
import { nameOf } from './week-block';
import { formatClockRange } from './week-words';
import { isWorthTelling, sayExposure, saySigns, sayVapour, SEVERITY_WORDS, type SafetyContext } from './safety-words';

function whyThere(task: Task, index: number, count: number): string {
  if (task.coats.length > 0) return count > 1 && index > 0 ? 'after the dust has settled' : 'clean air first';
  if (task.isDusty || task.hazards.facts.includes('grinding') || task.hazards.facts.includes('dust-sanding')) return 'dusty: before anything wet';
  return '';
}

function sayCrew(document: SeriesDocument, session: Session): string {
  const { away, present } = attendanceOf(document, session);
  const inside = present.map(({ name }) => name).join(', ') || 'nobody';
  return away.length === 0 ? inside : `${inside} (away: ${away.map(({ name }) => name).join(', ')})`;
}

/** The brief of a session by the accepted plan; null when there is no such session. */
export async function viewBrief({ storage }: Pick<SafetyContext, 'storage'>, document: SeriesDocument, sessionId: string): Promise<BriefView | null> {
  const session = findRecord(document, 'session', sessionId);
  if (session === undefined) return null;
  const { id: seriesId, zone } = document.series;
  const plan = await storage.acceptedPlan(seriesId);
  const brief = briefSession(document, session, datedWork(plan?.result ?? null));
  const piecesOf = (task: Task) => brief.pieces.filter(({ taskId }) => taskId === task.id);
  const placeName = (id: string): string => findRecord(document, 'place', id)?.name ?? '';
  return {
    seriesId, name: session.name, when: `${formatMoment(session.start, zone)} to ${formatMoment(session.end, zone)}`,
    crew: sayCrew(document, session),
    standing: STANDING_WORDS, hasPlan: plan !== null,
    order: brief.tasks.map((task, index) => ({ id: task.id, name: task.name, place: placeName(task.placeId), why: whyThere(task, index, brief.tasks.length),
      when: piecesOf(task).map(({ start, end }) => formatClockRange(start, end, zone)).join(', '),
      who: [...new Set(piecesOf(task).flatMap(({ personIds }) => personIds))].map((id) => nameOf(id, document.people, 'person')).join(', '),
    })),
    hazards: brief.hazards.map(({ hazard, taskNames, isDeferred }) => ({
      id: hazard.id, name: hazard.name, severity: SEVERITY_WORDS[hazard.severity], tasks: taskNames.join(', '), controls: hazard.controls.map(({ text }) => text),
      spoken: hazard.caution.spoken, deferral: isDeferred ? hazard.deferral?.text ?? null : null,
    })),
    layOut: brief.layOut, worn: brief.equipment.map(({ text, sign }) => (sign === null ? text : `${text} (${sign})`)), atHand: saySigns(brief.atHand.map(({ code }) => code)),
    notAlone: brief.notAlone.map(({ taskName, isCovered }) => ({ isCovered, text: isCovered ? `${taskName}: a second person is in; stay within call` : `${taskName}: only one person is in. Not tonight.` })),
    cautions: brief.cautions.flatMap(({ taskName, texts }) => texts.map((text) => `${taskName}: ${text}`)),
    unstated: brief.unstated.join(', '),
    ventilation: brief.ventilation, combinations: brief.combinations, stopRules: brief.stopRules,
    vapours: brief.tasks.flatMap((task) => sayVapour(document, task).row ?? []),
    exposures: brief.exposures.filter(isWorthTelling).map((day) => sayExposure(document, day)),
  };
}
