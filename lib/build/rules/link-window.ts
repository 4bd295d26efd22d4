import { issue, type Issue } from '@/lib/result';
import type { Link, Material, SeriesDocument } from '../model';
import { findRecord } from '../records';
import { formatNumber, quoteName, sayLength, startWith, subjectsOf } from '../words';
import { findWork } from '../works';
import { STAGE_WORDS } from './material-stages';
import type { Rule } from './rule';

/** Materials of the coats that the first end of a link lays. */
function coatsBefore(document: SeriesDocument, link: Link): readonly Material[] {
  const work = findWork(document, link.from);
  if (work?.kind !== 'task') return [];
  return work.coats.flatMap((coat) => findRecord(document, 'material', coat.materialId) ?? []);
}

function checkStage(document: SeriesDocument, link: Link): readonly Issue[] {
  const { stage, maxWait } = link;
  if (stage === null) return [];
  const work = findWork(document, link.from);
  if (work === undefined) return [];
  if (work.kind === 'outsideJob' || work.coats.length === 0) {
    return [issue('stage-without-coat', `${startWith(link)} waits until ${quoteName(work.name)} is ${STAGE_WORDS[stage]}, but that lays no coat.`,
      'Choose no drying stage and type the wait in minutes.', { path: ['stage'], subjects: subjectsOf(link, work) })];
  }
  const [slowest] = coatsBefore(document, link).toSorted((a, b) => b.stages[stage] - a.stages[stage]);
  if (slowest === undefined || maxWait === null || maxWait >= slowest.stages[stage]) return [];
  const message = `${startWith(link)} allows at most ${sayLength(maxWait)}, but the coat of ${quoteName(slowest.name)} from ${quoteName(work.name)} `
    + `is ${STAGE_WORDS[stage]} only after ${sayLength(slowest.stages[stage])} at ${formatNumber(slowest.referenceTemperature)} °C.`;
  return [issue('window-shorter-than-stage', message, `Type a longest wait of more than ${sayLength(slowest.stages[stage])}, or leave it empty.`,
    { path: ['maxWait'], subjects: subjectsOf(link, work, slowest) })];
}

function checkWaits(link: Link): readonly Issue[] {
  const subjects = subjectsOf(link);
  if (!(link.minWait >= 0)) {
    return [issue('wait-negative', `${startWith(link)} has a shortest wait of ${sayLength(link.minWait)}; a wait is 0 min or more.`,
      'Type 0 min or more.', { path: ['minWait'], subjects })];
  }
  if (link.maxWait === null || link.maxWait >= link.minWait) return [];
  return [issue('window-reversed', `${startWith(link)} asks to wait at least ${sayLength(link.minWait)} and at most ${sayLength(link.maxWait)}, which cannot be.`,
    `Type a longest wait of ${sayLength(link.minWait)} or more, or leave it empty.`, { path: ['maxWait'], subjects })];
}

/** A link can be kept: its longest wait is no shorter than its shortest, nor than the coat needs at its reference temperature. */
export const checkLinkWindows: Rule = (document) =>
  document.links.flatMap((link) => {
    const stage = checkStage(document, link);
    return [...checkWaits(link), ...stage];
  });
