/** What the fields of a form offer to choose from. */
import { factWords, HAZARD_FACTS, type Part, type SeriesDocument } from '@/lib/build';
import { listZones } from '@/lib/calendar';
import { listHolidayCountries } from '@/lib/exchange';
import { listSigns } from '@/lib/safety';
import type { Choice, ChoiceSource } from './record-form-model';

const named = (records: readonly { readonly id: string; readonly name: string }[]): readonly Choice[] =>
  records.map(({ id, name }) => ({ value: id, label: name }));

function distinct(words: readonly string[]): readonly Choice[] {
  const used = [...new Set(words.map((word) => word.trim()).filter((word) => word !== ''))];
  return used.toSorted((a, b) => a.localeCompare(b, 'en')).map((word) => ({ value: word, label: word }));
}

const labelPart = (part: Part): string => (part.assembly === '' ? part.name : `${part.name} (${part.assembly})`);

export function listZoneChoices(): readonly Choice[] {
  return listZones().map((zone) => ({ value: zone, label: zone }));
}

/** Every source of a series: records by id, or words already used. */
export function listChoices(document: SeriesDocument): Readonly<Record<ChoiceSource, readonly Choice[]>> {
  return {
    people: named(document.people),
    places: named(document.places),
    equipment: named(document.equipment),
    parts: document.parts.map((part) => ({ value: part.id, label: labelPart(part) })),
    materials: named(document.materials),
    trades: named(document.trades),
    episodes: named(document.episodes),
    tasks: named(document.tasks),
    threads: distinct(document.segments.map((segment) => segment.thread)),
    sponsors: distinct(document.sponsorships.map((one) => one.sponsor)),
    whereabouts: [
      { value: 'store:', label: 'In store' },
      ...document.places.map(({ id, name }) => ({ value: `place:${id}`, label: `In the workshop: ${name}` })),
      ...document.trades.map(({ id, name }) => ({ value: `trade:${id}`, label: `Away at ${name}` })),
    ],
    works: [
      ...document.tasks.map(({ id, name }) => ({ value: `task:${id}`, label: name })),
      ...document.outsideJobs.map(({ id, name }) => ({ value: `outsideJob:${id}`, label: `${name} (outside job)` })),
    ],
    skills: distinct([...document.people.flatMap((person) => person.skills), ...document.tasks.flatMap((task) => task.crew.map((need) => need.skill ?? ''))]),
    assemblies: distinct(document.parts.map((part) => part.assembly)),
    airZones: distinct(document.places.map((place) => place.airZone)),
    crafts: distinct(document.trades.map((trade) => trade.craft)),
    zones: listZoneChoices(),
    countries: listHolidayCountries().map(({ code, name }) => ({ value: code, label: name })),
    hazardFacts: HAZARD_FACTS.map((fact) => ({ value: fact, label: factWords(fact) })),
    signs: listSigns().map(({ code, meaning }) => ({ value: code, label: `${code} ${meaning}` })),
  };
}

/** States of each part by the part's id. */
export function listPartStates(document: SeriesDocument): Readonly<Record<string, readonly Choice[]>> {
  return Object.fromEntries(document.parts.map((part) => [part.id, named(part.states)]));
}
