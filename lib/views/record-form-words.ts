/** Values of records in words, for the history and for rows of lists. */
import { formatDay, formatLength, formatMoment, formatWorkLength } from '@/lib/calendar';
import { instant } from '@/lib/units';
import { encodeChoice, itemIn, keyOf, listIn, writeNumber } from './record-form-draft';
import type { Choice, ChoiceSource, ChoiceSpec, FieldSpec, LeafSpec } from './record-form-model';

/** What is needed to say names instead of ids. */
export interface Naming {
  readonly zone: string;
  readonly choices: Readonly<Record<ChoiceSource, readonly Choice[]>>;
  readonly partStates: Readonly<Record<string, readonly Choice[]>>;
}

const NOTHING = 'nothing';

/** @example formatLongDay('2026-12-01') // 'Tue 1 Dec 2026' */
export function formatLongDay(date: string): string {
  return /^\d{4}-\d\d-\d\d$/.test(date) ? `${formatDay(date)} ${date.slice(0, 4)}` : date;
}

function labelOf(options: readonly Choice[], value: string): string | undefined {
  return options.find((option) => option.value === value)?.label;
}

function sayChoice(field: ChoiceSpec, value: unknown, naming: Naming): string {
  const text = encodeChoice(field.codec, value);
  if (text === '') return field.none ?? NOTHING;
  const options = typeof field.options === 'string' ? naming.choices[field.options] : field.options;
  return labelOf(options, text) ?? 'something since removed';
}

function sayThreePoint(field: Extract<LeafSpec, { type: 'threePoint' }>, value: unknown): string {
  const say = (point: unknown) => (field.of === 'length' && typeof point === 'number' ? formatWorkLength(point) : writeNumber(point));
  const points = `${say(keyOf(value, 'low'))} – ${say(keyOf(value, 'likely'))} – ${say(keyOf(value, 'high'))}`;
  return field.of === 'length' ? points : `${points} ${field.of.unit}`;
}

function sayLeaf(field: LeafSpec, value: unknown, naming: Naming, row: unknown): string {
  switch (field.type) {
    case 'text':
    case 'time':
      return typeof value === 'string' && value !== '' ? value : NOTHING;
    case 'number':
      return typeof value === 'number' ? `${writeNumber(value, field.scale)} ${field.unit}` : NOTHING;
    case 'length':
      if (typeof value !== 'number') return NOTHING;
      return field.clock === 'worked' ? formatWorkLength(value) : formatLength(value);
    case 'choice':
      return sayChoice(field, value, naming);
    case 'choices': {
      const options = typeof field.options === 'string' ? naming.choices[field.options] : field.options;
      return listIn(value).map((id) => labelOf(options, String(id)) ?? 'something since removed').join(', ') || NOTHING;
    }
    case 'check':
      return value === true ? 'yes' : 'no';
    case 'date':
      return typeof value === 'string' ? formatLongDay(value) : NOTHING;
    case 'moment':
      return typeof value === 'number' ? formatMoment(instant(value), naming.zone) : NOTHING;
    case 'threePoint':
      return sayThreePoint(field, value);
    case 'lines':
      return listIn(value).filter((line) => typeof line === 'string').join(', ') || NOTHING;
    case 'partState': {
      if (typeof value !== 'string') return field.none;
      const partId = keyOf(row, 'partId');
      return labelOf(typeof partId === 'string' ? (naming.partStates[partId] ?? []) : [], value) ?? 'a state since removed';
    }
  }
}

/** One item of a list in words: `Frame (Chassis): bare → primed`, `Monday, 18:30, 21:00`. */
function sayItem(fields: readonly FieldSpec[], item: unknown, naming: Naming): string {
  const [first, ...states] = fields;
  if (first !== undefined && states.length > 0 && states.every((field) => field.type === 'partState')) {
    const name = sayField(first, keyOf(item, first.name), naming, item);
    return `${name}: ${states.map((field) => sayField(field, keyOf(item, field.name), naming, item)).join(' → ')}`;
  }
  const said = fields.flatMap((field) => {
    const value = keyOf(item, field.name);
    if (field.type === 'check') return value === true ? [field.label.toLowerCase()] : [];
    const text = sayField(field, value, naming, item);
    return text === NOTHING ? [] : [text];
  });
  return said.join(', ');
}

/** A value in words and units; `row` is the item it stands in, where it stands in a list. */
export function sayField(field: FieldSpec, value: unknown, naming: Naming, row?: unknown): string {
  if (field.type === 'list') return listIn(value).map((item) => sayItem(field.fields, itemIn(field, item), naming)).join('; ') || NOTHING;
  if (field.type === 'group') {
    return field.fields.map((inner) => `${inner.label.toLowerCase()} ${sayField(inner, keyOf(value, inner.name), naming)}`).join(', ');
  }
  return sayLeaf(field, value, naming, row);
}
