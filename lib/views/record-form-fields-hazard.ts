/** What is asked about a hazard of the users' own. */
import type { HazardFields, SeriesRecord } from '@/lib/build';
import { LIBRARY } from '@/lib/safety';
import type { FieldSpec, FormSection, ListSpec } from './record-form-model';
import { nameField, options } from './record-form-parts';

const SEVERITIES = options(['I', 'II', 'III', 'IV'], { I: 'I catastrophic: it can kill or maim', II: 'II critical: serious injury or illness', III: 'III marginal: minor injury', IV: 'IV negligible' });

const LEVELS = options(['eliminate', 'substitute', 'engineer', 'administer'], {
  eliminate: 'takes it away', substitute: 'replaces it with something less bad', engineer: 'guards or extracts', administer: 'a rule, a way of working',
});

const STATUSES = options(['read', 'memory', 'computed', 'judgement', 'practice'], {
  read: 'read there', memory: 'from memory: shown as unverified', computed: 'computed', judgement: 'our judgement', practice: 'common practice, no source',
});

/** Ways to be set off: any of the groups, each with all of its facts. */
const factGroups = (words: Pick<ListSpec, 'name' | 'label' | 'help' | 'whenNone' | 'isOptional'>): ListSpec => ({
  type: 'list', ...words, item: 'way', isBare: true,
  fields: [{
    type: 'list', name: 'facts', label: 'All of these together', item: 'fact', isBare: true, whenNone: 'No fact yet: add one.',
    fields: [{ type: 'choice', codec: 'text', name: 'fact', label: 'Fact', options: 'hazardFacts' }],
  }],
});

const sign: FieldSpec = { type: 'text', name: 'sign', label: 'ISO 7010 sign', suggest: 'signs', isOptional: true, isNullable: true, help: 'Such as M017.' };

export const HAZARD_SECTIONS: readonly FormSection[] = [
  {
    title: 'The hazard',
    fields: [
      nameField('What can hurt somebody: “Piston thrown out by compressed air”.'),
      { type: 'choice', codec: 'text', name: 'severity', label: 'Severity', options: SEVERITIES },
      factGroups({ name: 'trigger', label: 'What sets it off', help: 'Any one way is enough. The facts are those that tasks state, or that follow from materials, tools and place.', whenNone: 'Nothing sets it off yet: it would never be found.' }),
      { type: 'check', name: 'needsSecondPerson', label: 'Never with only one person', help: 'The plan then gives the task two people.' },
      {
        type: 'choice', codec: 'text', name: 'replaces', label: 'Stands in for', none: 'Nothing: it stands beside the library', isOptional: true,
        options: LIBRARY.map(({ id, name }) => ({ value: id, label: name })),
      },
    ],
  },
  {
    title: 'What is done about it',
    help: 'The best first: take it away, replace it, guard it, make a rule. What people wear comes last.',
    fields: [
      {
        type: 'list', name: 'controls', label: 'Controls', item: 'control', hasIds: true, whenNone: 'A hazard needs at least one.',
        fields: [
          { type: 'choice', codec: 'text', name: 'level', label: 'It', options: LEVELS },
          { type: 'text', name: 'text', label: 'What is done', isLong: true },
          { type: 'check', name: 'isShown', label: 'To be seen in the footage' },
        ],
      },
      {
        type: 'list', name: 'equipment', label: 'Worn', item: 'thing', hasIds: true, isOptional: true, whenNone: 'Nothing that is worn protects here.',
        fields: [
          { type: 'text', name: 'text', label: 'What is worn' }, sign,
          { type: 'text', name: 'standard', label: 'Standard', isOptional: true },
          { type: 'choice', codec: 'text', name: 'standardStatus', label: 'The standard is', options: STATUSES },
        ],
      },
      {
        type: 'list', name: 'signs', label: 'Signs to hang up or show', item: 'sign', isBare: true, isOptional: true, whenNone: 'None.',
        fields: [{ type: 'text', name: 'code', label: 'ISO 7010 code', suggest: 'signs' }],
      },
    ],
  },
  {
    title: 'What viewers are told',
    fields: [
      {
        type: 'group', name: 'caution', label: 'Caution',
        fields: [
          { type: 'text', name: 'screen', label: 'On screen', isLong: true, help: 'At most two lines of 37 characters.' },
          { type: 'text', name: 'spoken', label: 'Spoken', isLong: true, help: 'At most 30 words.' },
        ],
      },
      { type: 'text', name: 'show', label: 'What the footage should show', isLong: true, isOptional: true },
    ],
  },
  {
    title: 'Left to somebody licensed or equipped',
    help: 'Empty: no facts make it so.',
    fields: [{
      type: 'group', name: 'deferral', label: 'Leave it',
      fields: [
        { type: 'text', name: 'text', label: 'When', isLong: true, isOptional: true, help: 'In words: “the rim is a split rim”.' },
        { type: 'check', name: 'isAlways', label: 'Always' },
        factGroups({ name: 'when', label: 'Facts that make it so', whenNone: 'None: a person has to know.', isOptional: true }),
      ],
    }],
  },
  {
    title: 'Where it comes from',
    help: 'No hazard without a source. “Workshop practice, no source” is an answer too.',
    fields: [{
      type: 'list', name: 'sources', label: 'Sources', item: 'source', whenNone: 'A hazard needs at least one.',
      fields: [
        { type: 'text', name: 'text', label: 'Source', isLong: true },
        { type: 'choice', codec: 'text', name: 'status', label: 'It is', options: STATUSES },
        { type: 'date', name: 'reviewed', label: 'Last read on', isOptional: true },
      ],
    }],
  },
];

/** The values of a hazard as its form asks for them: “always” is a tick of its own. */
export function hazardValues(fields: HazardFields & { readonly name: string }): Readonly<Record<string, unknown>> {
  const { deferral } = fields;
  return { ...fields, deferral: deferral === null ? undefined : { ...deferral, isAlways: deferral.when === 'always' } };
}

/** The values of a record as its form asks for them. */
export function formValues(record: SeriesRecord): unknown {
  return record.kind === 'hazard' ? hazardValues(record) : record;
}
