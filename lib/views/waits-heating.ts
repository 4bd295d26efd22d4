/** What heating would buy for the coats that wait: hours, energy and money against the moment they are ready. */
import { DEFAULT_WORKSHOP, roomOf, type SeriesDocument } from '@/lib/build';
import { formatMoment } from '@/lib/calendar';
import type { HeatingRun, WorkshopInput } from '@/lib/climate';
import {
  cheapestHeating, compareHeating, findIgnitionConflicts, heaterCautions, heatingCurve, heatingOf, steadyOptions, type HeatingOutcome, type SolventSpan,
} from '@/lib/cure';
import { issue, type Issue } from '@/lib/result';
import { addMinutes, type Instant } from '@/lib/units';
import type { Waiting } from './waits-holds';
import type { HeatingPoint, HeatingView } from './waits-model';
import { hoursBetween, type Air, type LaidCoat } from './workshop-air';

const SET_POINTS = [10, 15, 20];
const HOURS = [6, 12, 24, 48, 72];
/** Days in which hazards are told, and how many of them one by one. */
const HAZARD_DAYS = 7;
const MOST_HAZARDS = 3;
/** Shoots offered as the moment to be ready by. */
const MOST_SHOOTS = 8;

/** What a person chose on the page; what does not exist is passed over. */
export interface HeatingChoice {
  readonly what: string | null;
  readonly by: string | null;
}

/** Coats that are laid and not yet fit to handle. */
function listWaiting(coats: readonly LaidCoat[], now: Instant): readonly LaidCoat[] {
  return coats.filter(({ isLaid, forecast }) => isLaid && !forecast.isSpoilt && (forecast.reached.handle === null || forecast.reached.handle > now));
}

/** Recording sessions ahead: the shoots that a coat may have to be ready for. */
function listShoots(document: SeriesDocument, now: Instant): readonly { readonly id: string; readonly start: Instant; readonly name: string }[] {
  return document.sessions.filter(({ start, isRecording }) => isRecording && start > now).toSorted((a, b) => a.start - b.start).slice(0, MOST_SHOOTS);
}

function showPoints(outcomes: readonly HeatingOutcome[], cheapest: HeatingOutcome | null, now: Instant, zone: string, currency: string): readonly HeatingPoint[] {
  const curve = new Set(heatingCurve(outcomes));
  return outcomes.toSorted((a, b) => a.kwh - b.kwh || a.hours - b.hours).map((outcome) => ({
    name: outcome.option.name, hours: Math.round(outcome.hours * 10) / 10, kwh: Math.round(outcome.kwh * 10) / 10, cost: `${outcome.cost.toFixed(2)} ${currency}`,
    ready: outcome.readyAt === null ? 'not in the time that is known' : formatMoment(outcome.readyAt, zone),
    readyIn: outcome.readyAt === null ? null : Math.round(hoursBetween(now, outcome.readyAt) * 10) / 10,
    isOnCurve: curve.has(outcome), isCheapest: outcome === cheapest,
  }));
}

function sayVerdict(cheapest: HeatingOutcome | null, outcomes: readonly HeatingOutcome[], by: Instant, zone: string, currency: string): string {
  const until = formatMoment(by, zone);
  if (cheapest === null) {
    const best = heatingCurve(outcomes).at(-1);
    return `None of these makes it ready by ${until}.${best?.readyAt ? ` The warmest is ready ${formatMoment(best.readyAt, zone)}.` : ''} Choose a later shoot, or film something else.`;
  }
  if (cheapest.option.runs.length === 0) return `It is ready by ${until} without more heating: ${formatMoment(cheapest.readyAt!, zone)}.`;
  return `Cheapest plan that is ready by ${until}: ${cheapest.option.name} from now, ${cheapest.kwh.toFixed(0)} kWh for ${cheapest.cost.toFixed(2)} ${currency}; ready ${formatMoment(cheapest.readyAt!, zone)}.`;
}

/** Solvent in the air from the opening of the tin to touch dry. */
function solventSpans(coats: readonly LaidCoat[]): readonly SolventSpan[] {
  return coats.filter(({ material }) => material.hasSolvent).map(({ material, task, airZone, laidAt, forecast }) => ({
    name: `${material.name} (${task.name})`, airZone, start: addMinutes(laidAt, -task.effort.high), end: forecast.reached.touchDry ?? addMinutes(laidAt, 24 * 60),
  }));
}

/** Hours in which something that glows or burns runs in solvent, each with its fix. */
function listHazards(document: SeriesDocument, airZone: string, runs: readonly HeatingRun[], coats: readonly LaidCoat[]): readonly Issue[] {
  const { heater } = roomOf(document.series, airZone);
  const { workshop, zone } = document.series;
  const again = workshop === undefined ? ' Say in the settings of the series which heater there is: then plans keep solvent coats out of its hours.' : ' A new plan keeps coats that are not on yet out of these hours.';
  return findIgnitionConflicts(heater, runs, airZone, solventSpans(coats)).map(({ name, heaterKind, overlap }) =>
    issue('ignition', `Fire: the ${heaterKind} heater runs from ${formatMoment(overlap.start, zone)} to ${formatMoment(overlap.end, zone)} in the solvent vapour of ${name}.`,
      `Heat only after it is touch dry and the room is aired, or with a heater made for air that holds solvent.${again}`));
}

interface Setting extends Waiting {
  readonly air: Air;
  readonly coats: readonly LaidCoat[];
}

/** Coats that are on in one air; the whole choice when the person chose all of it. */
function chooseCoats(waiting: readonly LaidCoat[], what: string | null): readonly LaidCoat[] {
  const one = waiting.find(({ key }) => key === what);
  if (one !== undefined) return [one];
  const zone = waiting.find(({ airZone }) => what === `air:${airZone}`)?.airZone ?? waiting[0]?.airZone;
  return waiting.filter(({ airZone }) => airZone === zone);
}

function listChoices(waiting: readonly LaidCoat[]): HeatingView['choices'] {
  const zones = [...new Set(waiting.map(({ airZone }) => airZone))];
  return [
    ...zones.map((zone) => ({ value: `air:${zone}`, label: `Everything that waits in: ${zone}` })),
    ...waiting.map(({ key, material, task }) => ({ value: key, label: `${material.name}, ${task.name}` })),
  ];
}

/** Every conflict of heating and solvent in all airs within a span: by the sessions, the heating runs and the coats laid and planned. */
export function listFireConflicts(document: SeriesDocument, coats: readonly LaidCoat[], within: { readonly start: Instant; readonly end: Instant }): readonly Issue[] {
  const zones = [...new Set(document.places.map(({ airZone }) => airZone))];
  return zones.flatMap((zone) => {
    const runs = heatingOf(document, zone).filter(({ start, end }) => end > within.start && start < within.end);
    return runs.length === 0 ? [] : listHazards(document, zone, runs, coats);
  });
}

/** null while nothing waits, or no weather is recorded. */
export function weighHeating({ document, now, air, coats }: Setting, choice: HeatingChoice): HeatingView | null {
  const waiting = listWaiting(coats, now);
  const chosen = chooseCoats(waiting, choice.what);
  const [first] = chosen;
  if (air.hourly === null || first === undefined) return null;
  const { pricePerKwh, currency } = document.series.workshop ?? DEFAULT_WORKSHOP;
  const { heater } = roomOf(document.series, first.airZone);
  const { zone } = document.series;
  const shoots = listShoots(document, now);
  const shoot = shoots.find(({ id }) => id === choice.by) ?? shoots[0];
  const by = shoot?.start ?? addMinutes(now, 3 * 1440);
  const input: WorkshopInput = air.hourly.inputOf(first.airZone);
  const waits = chosen.map(({ coat, laidAt }) => ({ material: coat.material, laidAt, stage: 'handle' as const }));
  const outcomes = compareHeating(input, waits, steadyOptions(now, SET_POINTS, HOURS), heater, pricePerKwh);
  const cheapest = cheapestHeating(outcomes, by);
  const [run] = cheapest?.option.runs ?? [];
  const soon = addMinutes(now, HAZARD_DAYS * 1440);
  const offered = run ?? { start: now, end: addMinutes(now, 24 * 60), setPoint: 15 };
  const hazards = listHazards(document, first.airZone, [...input.heating.runs.filter(({ start, end }) => end > now && start < soon), offered], coats.filter(({ laidAt }) => laidAt < soon));
  return {
    choices: listChoices(waiting), chosen: waiting.some(({ key }) => key === choice.what) ? (choice.what ?? '') : `air:${first.airZone}`,
    airZone: first.airZone, by: shoot?.id ?? '', byChoices: shoots.map(({ id, start, name }) => ({ value: id, label: `${formatMoment(start, zone)}, ${name}` })),
    points: showPoints(outcomes, cheapest, now, zone, currency), verdict: sayVerdict(cheapest, outcomes, by, zone, currency),
    run: run === undefined ? null : { name: `Keep ${first.material.name} warm`, airZone: first.airZone, start: run.start, end: run.end, setPoint: run.setPoint },
    hazards: hazards.slice(0, MOST_HAZARDS), moreHazards: Math.max(0, hazards.length - MOST_HAZARDS),
    cautions: heaterCautions(heater),
  };
}
