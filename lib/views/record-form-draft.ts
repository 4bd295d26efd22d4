/** From the values of a record to what stands in the fields of its form. */
import { wallOf } from '@/lib/calendar';
import { instant } from '@/lib/units';
import { writeLength } from './record-form-length';
import type { ChoiceCodec, ChoiceSpec, Draft, DraftObject, FieldSpec, LeafSpec, ListSpec } from './record-form-model';

const SHARP = 1e6;

/** A record of unknown shape, read key by key. */
export function keyOf(value: unknown, key: string): unknown {
  return typeof value === 'object' && value !== null ? new Map<string, unknown>(Object.entries(value)).get(key) : undefined;
}

export function listIn(value: unknown): readonly unknown[] {
  return Array.isArray(value) ? value : [];
}

function textOf(value: unknown): string {
  return typeof value === 'string' || typeof value === 'number' ? String(value) : '';
}

/** @example writeNumber(0.57, 100) // '57' */
export function writeNumber(value: unknown, scale = 1): string {
  return typeof value === 'number' ? String(Math.round(value * scale * SHARP) / SHARP) : '';
}

/** A value as the `value` of an option. */
export function encodeChoice(codec: ChoiceCodec, value: unknown): string {
  if (value === null || value === undefined) return '';
  if (codec === 'ratio') return `${textOf(keyOf(value, 'numerator'))}/${textOf(keyOf(value, 'denominator'))}`;
  if (codec === 'reference') return `${textOf(keyOf(value, 'kind'))}:${textOf(keyOf(value, 'id'))}`;
  return textOf(value);
}

/** First option of a choice that cannot stay empty. */
function firstOption(field: ChoiceSpec): string {
  if (field.none !== undefined || typeof field.options === 'string') return '';
  return field.options[0]?.value ?? '';
}

function draftLeaf(field: LeafSpec, value: unknown, zone: string): Draft {
  switch (field.type) {
    case 'text':
    case 'date':
    case 'time':
    case 'partState':
      return textOf(value);
    case 'number':
      return writeNumber(value, field.scale);
    case 'length':
      return typeof value === 'number' ? writeLength(value, field.clock) : '';
    case 'choice':
      return value === undefined ? firstOption(field) : encodeChoice(field.codec, value);
    case 'choices':
      return listIn(value).map(textOf);
    case 'check':
      return value === true;
    case 'moment': {
      if (typeof value !== 'number') return { date: '', time: '' };
      const { date, time } = wallOf(instant(value), zone);
      // Kept until somebody types here: a time that comes twice in autumn would not survive being written down.
      return { date, time, at: String(value) };
    }
    case 'threePoint': {
      const write = (point: unknown) => {
        if (typeof point !== 'number') return '';
        return field.of === 'length' ? writeLength(point, 'worked') : writeNumber(point);
      };
      return { low: write(keyOf(value, 'low')), likely: write(keyOf(value, 'likely')), high: write(keyOf(value, 'high')) };
    }
    case 'lines':
      return listIn(value).map(textOf).join('\n');
  }
}

/** The only field of the items of a bare list. */
export function bareField({ name, fields: [field] }: ListSpec): FieldSpec {
  if (field === undefined) throw new Error(`The list ${name} asks for nothing`);
  return field;
}

/** An item of a list as its fields read it. */
export function itemIn(field: ListSpec, item: unknown): unknown {
  return field.isBare ? { [bareField(field).name]: item } : item;
}

/** What stands in a field for a value; `undefined` gives an empty field. */
function draftField(field: FieldSpec, value: unknown, zone: string): Draft {
  if (field.type === 'group') return draftFields(field.fields, value, zone);
  if (field.type === 'list') {
    return listIn(value).map((item) => {
      const draft = draftFields(field.fields, itemIn(field, item), zone);
      return field.hasIds ? { ...draft, id: textOf(keyOf(item, 'id')) } : draft;
    });
  }
  return draftLeaf(field, value, zone);
}

/** What stands in the fields for a record or a part of one; `undefined` gives empty fields. */
export function draftFields(fields: readonly FieldSpec[], value: unknown, zone: string): DraftObject {
  return Object.fromEntries(fields.map((field) => [field.name, draftField(field, keyOf(value, field.name), zone)]));
}
