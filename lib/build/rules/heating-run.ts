import { issue } from '@/lib/result';
import { formatNumber, quoteName, sayMoment, startWith, subjectsOf } from '../words';
import type { Rule } from './rule';

const [COLDEST, HOTTEST] = [-10, 60];

/** A heating run ends after it starts, has a set point that a heater can hold, and heats an air that some place has. */
export const checkHeatingRuns: Rule = (document) => {
  const zones = new Set(document.places.map((place) => place.airZone));
  return document.heatingRuns.flatMap((run) => {
    const subjects = subjectsOf(run);
    const issues = run.end > run.start ? [] : [
      issue('heating-reversed', `${startWith(run)} ends on ${sayMoment(document, run.end)}, not after its start on ${sayMoment(document, run.start)}.`, 'Choose a later end.', { path: ['end'], subjects }),
    ];
    if (!(run.setPoint >= COLDEST && run.setPoint <= HOTTEST)) {
      issues.push(issue('heating-set-point', `${startWith(run)} has a set point of ${formatNumber(run.setPoint)} °C.`, `Type ${COLDEST} to ${HOTTEST} °C.`, { path: ['setPoint'], subjects }));
    }
    if (zones.size > 0 && !zones.has(run.airZone)) {
      issues.push(issue('heating-air-unknown', `${startWith(run)} heats the air ${quoteName(run.airZone)}, which no place shares.`, 'Choose the air of a place.', { severity: 'warn', path: ['airZone'], subjects }));
    }
    return issues;
  });
};
