/** Hours in which no solvent may be in an air, since a heater that can light it is on there. They bind the plan. */
import { roomOf, type Task } from '@/lib/build';
import type { Heater } from '@/lib/climate';
import { ignitingHours } from '@/lib/cure';
import { mergeOverlapping } from '@/lib/calendar';
import type { Interval } from '@/lib/scheduling';
import { cureOf, need, type Draft } from './draft';
import { lastEnd } from './wait-table';

/** A heating that keeps a coat out, minutes of the engine. */
export interface HeaterHours {
  readonly airZone: string;
  readonly materialName: string;
  readonly heater: Heater['kind'];
  /** While it is on. */
  readonly on: Interval;
  /** No solvent may be let out: from the last moment that leaves it time to dry before, to the end of the heating. */
  readonly closed: Interval;
}

/** {@link ignitingHours} in minutes of the engine, worked out once for each air. */
export function dangerousHours({ document, clock, horizon }: Pick<Draft, 'document' | 'clock' | 'horizon'>): (airZone: string) => readonly Interval[] {
  const known = new Map<string, readonly Interval[]>();
  const find = (airZone: string): readonly Interval[] => {
    const on = ignitingHours(document, airZone).map(({ start, end }) => ({ start: Math.max(0, clock.down(start)), end: Math.min(horizon, clock.up(end)) }));
    return mergeOverlapping(on.filter(({ start, end }) => start < end));
  };
  return (airZone) => {
    const hours = known.get(airZone) ?? find(airZone);
    known.set(airZone, hours);
    return hours;
  };
}

/** Every heating that keeps a solvent coat of the task out of its air, and the minutes that closes. */
export function heaterHours(draft: Draft, task: Task): readonly HeaterHours[] {
  const solvents = task.coats.map((coat) => need(draft.materials, coat.materialId, 'material')).filter(({ hasSolvent }) => hasSolvent);
  if (solvents.length === 0) return [];
  const { airZone } = need(draft.places, task.placeId, 'place');
  const runs = draft.heatedIn(airZone);
  if (runs.length === 0) return [];
  const heater = roomOf(draft.document.series, airZone).heater.kind;
  return solvents.flatMap((material) => {
    const wait = cureOf(draft, task).wait(material, 'touchDry');
    return runs.map((on): HeaterHours => ({ airZone, materialName: material.name, heater, on, closed: { start: Math.max(0, lastEnd(wait, on.start)), end: on.end } }));
  });
}
