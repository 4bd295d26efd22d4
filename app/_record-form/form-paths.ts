/** Paths into a draft: writing at one, and finding the field an issue belongs to. */
import type { Issue } from '@/lib/result';
import type { Draft, DraftObject, FieldSpec, ListSpec } from '@/lib/views';

export type Path = readonly (string | number)[];

export const fieldId = (path: Path): string => `f-${path.join('-')}`;

export function isDraftObject(draft: Draft | undefined): draft is DraftObject {
  return typeof draft === 'object' && !Array.isArray(draft);
}

export function isDraftList(draft: Draft | undefined): draft is readonly Draft[] {
  return Array.isArray(draft);
}

/** The draft with one value replaced. */
export function setDraft(draft: Draft, path: Path, value: Draft): Draft {
  const [step, ...rest] = path;
  if (step === undefined) return value;
  if (isDraftList(draft)) return draft.map((item, index) => (index === step ? setDraft(item, rest, value) : item));
  if (!isDraftObject(draft)) return draft;
  return { ...draft, [step]: setDraft(draft[String(step)] ?? '', rest, value) };
}

/** An item of a list with nothing in it: the first option where a choice cannot stay empty. */
export function emptyItem(fields: readonly FieldSpec[]): DraftObject {
  return Object.fromEntries(fields.map((field) => [field.name, emptyField(field)]));
}

function emptyField(field: FieldSpec): Draft {
  switch (field.type) {
    case 'group':
      return emptyItem(field.fields);
    case 'list':
    case 'choices':
      return [];
    case 'check':
      return false;
    case 'moment':
      return { date: '', time: '' };
    case 'threePoint':
      return { low: '', likely: '', high: '' };
    case 'choice':
      return field.none === undefined && typeof field.options !== 'string' ? (field.options[0]?.value ?? '') : '';
    default:
      return '';
  }
}

/** The path of the control that an issue is shown at; empty when the form has none. */
function findControl(fields: readonly FieldSpec[], path: Path): Path {
  const [name, ...rest] = path;
  const field = fields.find((candidate) => candidate.name === name);
  if (field === undefined) return [];
  if (field.type === 'group') return [field.name, ...findControl(field.fields, rest)];
  const [next, ...deeper] = rest;
  if (field.type === 'list' && typeof next === 'number') return [field.name, next, ...findInItem(field, deeper)];
  if (field.type === 'threePoint' && typeof next === 'string') return [field.name, next];
  return [field.name];
}

/** Within an item: a bare item is its only field, and what is about the whole item is shown at its first field. */
function findInItem({ fields, isBare }: ListSpec, path: Path): Path {
  const [first] = fields;
  if (first === undefined) return [];
  if (isBare) return findControl(fields, [first.name, ...path]);
  const found = findControl(fields, path);
  return found.length > 0 ? found : findControl(fields, [first.name]);
}

/** Issues by the id of the control they are shown at; those of the whole record stand under ''. */
export function sortIssues(fields: readonly FieldSpec[], issues: readonly Issue[]): ReadonlyMap<string, readonly Issue[]> {
  const sorted = new Map<string, Issue[]>();
  for (const found of issues) {
    const path = findControl(fields, found.path);
    const key = path.length === 0 ? '' : fieldId(path);
    sorted.set(key, [...(sorted.get(key) ?? []), found]);
  }
  return sorted;
}
