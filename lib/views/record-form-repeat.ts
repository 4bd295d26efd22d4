/** The form of sessions that repeat weekly. */
import type { SeriesDocument } from '@/lib/build';
import { dateOf } from '@/lib/calendar';
import type { Result } from '@/lib/result';
import type { Instant } from '@/lib/units';
import { findMissing, offerChoices } from './record-form';
import { draftFields } from './record-form-draft';
import type { FormSection, FormView } from './record-form-model';
import { nameField, WEEKDAYS } from './record-form-parts';
import { readForm } from './record-form-read';
import { SESSION_SECTIONS } from './record-form-fields-things';

/** Asked of a repeated session as of a single one. */
const SHARED: readonly string[] = ['placeIds', 'crewIds', 'isRecording', 'hasDaylight', 'isNoiseAllowed', 'heating'];

const SECTIONS: readonly FormSection[] = [
  {
    title: 'When',
    fields: [
      nameField('All of them get this name: “Tuesday evening”.'),
      { type: 'choices', name: 'weekdays', label: 'On', options: WEEKDAYS, isNumeric: true, whenNone: '' },
      { type: 'time', name: 'from', label: 'From' },
      { type: 'time', name: 'to', label: 'To', help: '24:00 at the latest.' },
      { type: 'date', name: 'startOn', label: 'First week begins on' },
      { type: 'number', name: 'weeks', label: 'For', unit: 'weeks' },
    ],
  },
  {
    title: 'Where and who',
    help: 'Whoever is away on a day is left out of that session.',
    fields: SESSION_SECTIONS.flatMap((section) => section.fields).filter((field) => SHARED.includes(field.name)),
  },
];

const FIELDS = SECTIONS.flatMap((section) => section.fields);

/** A weekly evening for twelve weeks from today, with everybody in and every place open. */
export function viewRepeatForm(document: SeriesDocument, now: Instant): FormView {
  const { id, zone } = document.series;
  const values = {
    name: '', weekdays: [], from: '18:30', to: '21:30', startOn: dateOf(now, zone), weeks: 12,
    placeIds: document.places.map((place) => place.id), crewIds: document.people.map((person) => person.id),
    isRecording: true, isNoiseAllowed: true,
  };
  return { seriesId: id, zone, sections: SECTIONS, draft: draftFields(FIELDS, values, zone), ...offerChoices(document, FIELDS), missing: findMissing(document, 'session') };
}

/** What was typed into it, as the input of the command. */
export function readRepeatForm(draft: unknown): Result<Record<string, unknown>> {
  return readForm(FIELDS, draft);
}
