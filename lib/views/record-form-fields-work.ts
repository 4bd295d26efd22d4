/** What is asked about tasks, outside jobs and the links between them. */
import { factWords, HAZARD_FACTS } from '@/lib/build';
import type { FieldSpec, FormSection, ListSpec } from './record-form-model';
import { nameField, options } from './record-form-parts';

const partUses = (help: string): ListSpec => ({
  type: 'list', name: 'parts', label: 'Parts', item: 'part', isOptional: true, whenNone: 'No part takes part in this yet.', help,
  fields: [
    { type: 'choice', codec: 'text', name: 'partId', label: 'Part', options: 'parts' },
    { type: 'partState', name: 'from', label: 'Must be in state', none: 'any state', isOptional: true },
    { type: 'partState', name: 'to', label: 'Leaves it in state', none: 'as it was', isOptional: true },
  ],
});

const episode: FieldSpec = {
  type: 'choice', codec: 'text', name: 'episodeId', label: 'Episode', options: 'episodes', none: 'No episode', isOptional: true,
  help: 'The episode this must be recorded for. Its release decides how urgent the work is.',
};

const SHOT_PURPOSES = ['before', 'during', 'after', 'insert', 'piece to camera', 'time-lapse', 'pickup'] as const;
const CATEGORIES = [
  'strip', 'clean', 'repair', 'machining', 'welding', 'filler', 'paint', 'electrics', 'assembly', 'setting up', 'filming', 'other',
] as const;
const COVERAGES = ['none', 'locked-off', 'moved camera', 'inserts and teaching', 'piece to camera', 'time-lapse', 'montage'] as const;

const taskWork: FormSection = {
  title: 'The work',
  fields: [
    nameField('What is done, as you would say it: “Strip the forks”.'),
    { type: 'choice', codec: 'text', name: 'category', label: 'Sort of work', options: options(CATEGORIES) },
    {
      type: 'threePoint', of: 'length', name: 'effort', label: 'Hands-on time',
      help: 'Smallest, likeliest and largest. Type 1 h 30, 1:30 or 90. Drying is not part of it.',
    },
    {
      type: 'check', name: 'inOneGo', label: 'Must be done in one go',
      help: 'Otherwise it may be split across sessions.',
    },
    { type: 'choice', codec: 'text', name: 'placeId', label: 'Place', options: 'places' },
    {
      type: 'list', name: 'crew', label: 'Crew', item: 'people', whenNone: 'Nobody is needed yet.',
      help: 'How many at once, and with which skill; no skill means anybody.',
      fields: [
        { type: 'number', name: 'count', label: 'How many', unit: 'people' },
        { type: 'text', name: 'skill', label: 'Skill', suggest: 'skills', isOptional: true, isNullable: true },
      ],
    },
    partUses('The order of the work follows from the states: what needs a part primed comes after what primes it.'),
    episode,
  ],
};

const taskCamera: FormSection = {
  title: 'In front of the camera',
  fields: [
    {
      type: 'choice', codec: 'text', name: 'coverage', label: 'How it is filmed', options: options(COVERAGES, { none: 'not filmed' }),
      help: 'Filming makes work longer. Filmed work needs a session that is set up for recording.',
    },
    {
      type: 'check', name: 'irreversible', label: 'Cannot be done or filmed a second time',
      help: 'Then its before-shots are planned ahead of it.',
    },
    {
      type: 'list', name: 'shots', label: 'Shots', item: 'shot', hasIds: true, isOptional: true, whenNone: 'No shots asked for.',
      fields: [
        { type: 'text', name: 'name', label: 'Shot' },
        { type: 'choice', codec: 'text', name: 'purpose', label: 'Purpose', options: options(SHOT_PURPOSES) },
        { type: 'length', clock: 'worked', name: 'time', label: 'Time to film it' },
        { type: 'check', name: 'mustHave', label: 'Must have' },
        {
          type: 'list', name: 'states', label: 'Parts in the picture', item: 'part in the picture', isOptional: true, whenNone: 'Parts as the work has them.',
          help: 'Only where it matters which state a part is in. The plan films it while it is so.',
          fields: [
            { type: 'choice', codec: 'text', name: 'partId', label: 'Part', options: 'parts' },
            { type: 'partState', name: 'stateId', label: 'In state', none: 'choose one' },
          ],
        },
        { type: 'moment', name: 'filmedAt', label: 'Filmed', isOptional: true, help: 'Empty: still to be filmed.' },
      ],
    },
  ],
};

const taskNeeds: FormSection = {
  title: 'What it needs',
  fields: [
    {
      type: 'list', name: 'coats', label: 'Coats and bonds laid', item: 'coat', hasIds: true, isOptional: true,
      whenNone: 'No paint, filler, sealer or glue is laid.', help: 'Their drying holds back what comes next.',
      fields: [{ type: 'choice', codec: 'text', name: 'materialId', label: 'Material', options: 'materials' }],
    },
    { type: 'choices', name: 'equipmentIds', label: 'Equipment', options: 'equipment', isOptional: true, whenNone: 'No equipment is recorded yet.' },
    { type: 'lines', name: 'layOut', label: 'Lay out beforehand', isOptional: true, help: 'One thing a line: gloves, gauge, wood pad.' },
    { type: 'lines', name: 'cautions', label: 'Cautions', isOptional: true, help: 'One a line, said or shown on screen.' },
  ],
};

const taskHazards: FormSection = {
  title: 'What could hurt somebody',
  isRare: true,
  help: 'The hazards follow from these facts and from materials, tools and place. See them on the page of safety.',
  fields: [{
    type: 'group', name: 'hazards', label: 'Facts',
    fields: [
      {
        type: 'choices', name: 'facts', label: 'Tick what is true', isOptional: true, whenNone: '',
        options: HAZARD_FACTS.map((fact) => ({ value: fact, label: factWords(fact) })),
      },
      { type: 'number', name: 'toolShare', label: 'Share of the time that tools run', unit: '%', scale: 100 },
      { type: 'number', name: 'sprayed', label: 'Paint sprayed', unit: 'ml', isOptional: true },
      {
        type: 'group', name: 'departure', label: "Departure from the maker's manual",
        fields: [
          { type: 'text', name: 'manualValue', label: "The manual's value", isOptional: true },
          { type: 'text', name: 'ownValue', label: 'The value used here', isOptional: true },
          { type: 'text', name: 'reason', label: 'Why', isOptional: true, isLong: true },
          { type: 'text', name: 'warning', label: 'Warning to be said and shown', isOptional: true, isLong: true },
        ],
      },
    ],
  }],
};

const taskRare: FormSection = {
  title: 'Conditions, manual and fixed times',
  isRare: true,
  fields: [
    {
      type: 'group', name: 'conditions', label: 'Conditions',
      fields: [
        { type: 'number', name: 'minimumTemperature', label: 'Lowest workshop temperature', unit: '°C', isOptional: true },
        { type: 'check', name: 'needsDaylight', label: 'Needs daylight' },
      ],
    },
    { type: 'check', name: 'isDusty', label: 'Makes dust', help: 'Kept apart from wet coats in the same air.' },
    { type: 'check', name: 'isNoisy', label: 'Makes noise', help: 'Only in sessions where noise is allowed.' },
    { type: 'text', name: 'manualReference', label: 'Page or section of the manual', isOptional: true },
    { type: 'moment', name: 'pinnedStart', label: 'Start fixed at', isOptional: true, help: 'The planner works round it.' },
    { type: 'moment', name: 'doneAt', label: 'Done at', isOptional: true, help: 'Filled in when the work is finished.' },
  ],
};

export const TASK_SECTIONS: readonly FormSection[] = [taskWork, taskCamera, taskNeeds, taskHazards, taskRare];

export const OUTSIDE_JOB_SECTIONS: readonly FormSection[] = [
  {
    title: 'The job',
    fields: [
      nameField('What the trade does: “Galvanize the frame”.'),
      { type: 'choice', codec: 'text', name: 'tradeId', label: 'Trade', options: 'trades' },
      partUses('What goes away, in which state, and in which state it comes back.'),
      {
        type: 'threePoint', of: { unit: 'working days' }, name: 'quote', label: 'How long they take',
        help: 'Smallest, likeliest and largest, in working days of the trade from drop-off to ready.',
      },
      { type: 'number', name: 'crew', label: 'People for a trip', unit: 'people' },
      episode,
    ],
  },
  {
    title: 'How it goes',
    help: 'Fill these in as they happen.',
    fields: [
      { type: 'moment', name: 'droppedOffAt', label: 'Dropped off at', isOptional: true },
      { type: 'date', name: 'promisedFor', label: 'Promised for', isOptional: true, help: 'The day they last promised; it overrules the quote.' },
      { type: 'moment', name: 'collectedAt', label: 'Collected at', isOptional: true },
    ],
  },
];

export const LINK_SECTIONS: readonly FormSection[] = [
  {
    title: 'What waits for what',
    help: 'Only for an order that does not follow from the states of the parts.',
    fields: [
      nameField('Why one waits for the other: “Filler before sanding”.'),
      { type: 'choice', codec: 'reference', name: 'from', label: 'First', options: 'works' },
      { type: 'choice', codec: 'reference', name: 'to', label: 'Then', options: 'works' },
    ],
  },
  {
    title: 'How long it waits',
    fields: [
      {
        type: 'choice', codec: 'text', name: 'stage', label: 'Wait for the coat to be', none: 'No coat to wait for', isOptional: true,
        options: [
          { value: 'touchDry', label: 'touch dry' },
          { value: 'recoatFrom', label: 'ready to recoat' },
          { value: 'handle', label: 'ready to handle' },
          { value: 'fullCure', label: 'fully cured' },
        ],
      },
      { type: 'length', clock: 'elapsed', name: 'minWait', label: 'At least', help: '0 when it may follow at once. Type 45 min, 3 h or 2 d.' },
      { type: 'length', clock: 'elapsed', name: 'maxWait', label: 'At most', isOptional: true, help: 'Empty: no upper bound.' },
      {
        type: 'choice', codec: 'text', name: 'clock', label: 'Counted in',
        options: [
          { value: 'elapsed', label: 'hours on the clock, nights included' },
          { value: 'working', label: 'hours of sessions' },
        ],
      },
    ],
  },
];
