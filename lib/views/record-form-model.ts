/** A record form as plain data: what is asked, in which words and units, and how the answers travel. */
import type { FormKind, RecordKind } from '@/lib/build';

/** What has been typed, shaped like the record: texts and ticks at the leaves, nothing read yet. */
export type Draft = string | boolean | readonly Draft[] | DraftObject;
export interface DraftObject {
  readonly [key: string]: Draft;
}

/** Lists of records, or of words already used, that a field offers. */
export type ChoiceSource =
  | 'people' | 'places' | 'equipment' | 'parts' | 'materials' | 'trades' | 'episodes' | 'tasks' | 'threads' | 'sponsors'
  | 'whereabouts' | 'works' | 'skills' | 'assemblies' | 'airZones' | 'crafts' | 'zones' | 'countries' | 'hazardFacts' | 'signs';

export interface Choice {
  readonly value: string;
  readonly label: string;
}

interface Words {
  /** Key in the record. */
  readonly name: string;
  readonly label: string;
  readonly help?: string;
  /** Empty is an answer: null, an empty list or an empty text. */
  readonly isOptional?: boolean;
}

export interface TextSpec extends Words {
  readonly type: 'text';
  readonly isLong?: boolean;
  /** Words already used elsewhere, offered while typing. */
  readonly suggest?: ChoiceSource;
  /** Empty becomes null instead of ''. */
  readonly isNullable?: boolean;
}

export interface NumberSpec extends Words {
  readonly type: 'number';
  readonly unit: string;
  /** What is shown is the value times this: 100 for a share shown in %. */
  readonly scale?: number;
}

/** A length typed as `1 h 30`, `90 min` or `2 d`, kept in minutes. `worked`: never shown in days. */
export interface LengthSpec extends Words {
  readonly type: 'length';
  readonly clock: 'elapsed' | 'worked';
}

/** How the value of a choice is kept. `ratio`: {numerator, denominator}; `reference`: {kind, id}. */
export type ChoiceCodec = 'text' | 'number' | 'ratio' | 'reference';

export interface ChoiceSpec extends Words {
  readonly type: 'choice';
  readonly codec: ChoiceCodec;
  readonly options: readonly Choice[] | ChoiceSource;
  /** Words of the empty choice, which is null. */
  readonly none?: string;
}

export interface ManyChoicesSpec extends Words {
  readonly type: 'choices';
  readonly options: readonly Choice[] | ChoiceSource;
  /** The values are numbers: weekdays. */
  readonly isNumeric?: boolean;
  /** Said instead of the boxes while there is nothing to choose from. */
  readonly whenNone: string;
}

export interface CheckSpec extends Words {
  readonly type: 'check';
}

export interface DateSpec extends Words {
  readonly type: 'date';
}

/** A date and a time of day in the zone of the series: `{date, time}`, with `at` (milliseconds) as long as nobody typed. */
export interface MomentSpec extends Words {
  readonly type: 'moment';
}

/** A time of day; `end` allows 24:00. */
export interface TimeSpec extends Words {
  readonly type: 'time';
}

/** Smallest, likeliest and largest. */
export interface ThreePointSpec extends Words {
  readonly type: 'threePoint';
  /** `length`: minutes typed in words. Otherwise the unit of three plain numbers. */
  readonly of: 'length' | { readonly unit: string };
}

/** Plain texts, one a line. */
export interface LinesSpec extends Words {
  readonly type: 'lines';
  readonly suggest?: ChoiceSource;
}

/** A state of the part chosen beside it in the same row. */
export interface PartStateSpec extends Words {
  readonly type: 'partState';
  readonly none: string;
}

export interface GroupSpec extends Words {
  readonly type: 'group';
  readonly fields: readonly FieldSpec[];
}

export interface ListSpec extends Words {
  readonly type: 'list';
  readonly fields: readonly FieldSpec[];
  /** One of them: `state`, `shot`. */
  readonly item: string;
  /** Items keep an id of their own, so that others can point at them. */
  readonly hasIds?: boolean;
  /** Items are kept as the plain value of their only field: a list of texts, a list of lists. */
  readonly isBare?: boolean;
  /** Said while the list is empty. */
  readonly whenNone: string;
}

export type LeafSpec =
  | TextSpec | NumberSpec | LengthSpec | ChoiceSpec | ManyChoicesSpec | CheckSpec
  | DateSpec | MomentSpec | TimeSpec | ThreePointSpec | LinesSpec | PartStateSpec;

export type FieldSpec = LeafSpec | GroupSpec | ListSpec;

export interface FormSection {
  readonly title: string;
  readonly help?: string;
  /** Folded away until asked for. */
  readonly isRare?: boolean;
  readonly fields: readonly FieldSpec[];
}

/** What any form needs to be drawn. */
export interface FormView {
  readonly seriesId: string;
  readonly zone: string;
  readonly sections: readonly FormSection[];
  readonly draft: DraftObject;
  readonly choices: Readonly<Partial<Record<ChoiceSource, readonly Choice[]>>>;
  /** States of each part, by the part's id. */
  readonly partStates: Readonly<Record<string, readonly Choice[]>>;
  /** What the first answer needs and is not there yet: `A task needs a place; there is none yet.` */
  readonly missing: readonly { readonly kind: FormKind; readonly text: string }[];
}

export interface RecordFormView extends FormView {
  readonly kind: RecordKind;
  /** null: a new record. */
  readonly id: string | null;
  /** 0 for a new record. */
  readonly revision: number;
  /** `Strip forks`, or '' for a new record. */
  readonly name: string;
}
