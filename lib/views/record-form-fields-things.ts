/** What is asked about people, places, parts, materials, trades, equipment, sessions, episodes and the series itself. */
import type { FormSection } from './record-form-model';
import { FILMING_SECTION } from './record-form-fields-story';
import { dateSpans, nameField, options, weeklyHours } from './record-form-parts';

export const PLACE_SECTIONS: readonly FormSection[] = [
  {
    title: 'The place',
    fields: [
      nameField('Where work is done: “Bench”, “Spray tent”, “Yard”.'),
      { type: 'number', name: 'capacity', label: 'Tasks that fit at once', unit: 'tasks' },
      {
        type: 'text', name: 'airZone', label: 'Air it shares', suggest: 'airZones',
        help: 'Give places with the same air the same word: dust and vapour reach them all.',
      },
    ],
  },
  {
    title: 'Its air',
    isRare: true,
    help: 'For vapour and the wait after isocyanate. A place with a volume counts as a room.',
    fields: [{
      type: 'group', name: 'air', label: 'Air of the room',
      fields: [
        { type: 'number', name: 'volume', label: 'Volume', unit: 'm³', isOptional: true },
        { type: 'number', name: 'airChanges', label: 'Air changes with the extraction running', unit: 'an hour', isOptional: true },
        { type: 'text', name: 'source', label: 'Where the figures come from', isOptional: true },
      ],
    }],
  },
];

export const PERSON_SECTIONS: readonly FormSection[] = [
  {
    title: 'The person',
    fields: [
      nameField('First name or what you call each other.'),
      { type: 'lines', name: 'skills', label: 'Skills', suggest: 'skills', isOptional: true, help: 'One a line: welding, painting, camera.' },
    ],
  },
  {
    title: 'Errands',
    fields: [
      weeklyHours('hours', 'Hours for errands', 'When they can take parts to a trade and fetch them. Sessions say when they are in the workshop.'),
      dateSpans('away', 'Away', 'Holidays and days off, both dates included.'),
    ],
  },
  {
    title: 'Consent to be shown', isRare: true, help: 'No episode is cleared before everybody of the crew has agreed, or somebody signs that a person is not to be seen.',
    fields: [{
      type: 'group', name: 'consent', label: 'Consent',
      fields: [
        { type: 'date', name: 'givenOn', label: 'Given on', isOptional: true, help: 'Empty: not given, or taken back.' },
        { type: 'date', name: 'until', label: 'For releases until', isOptional: true, help: 'Empty: for good.' },
        { type: 'text', name: 'where', label: 'Where the paper is', isOptional: true, help: 'And what it leaves out: “no voice”.' },
      ],
    }],
  },
];

export const PART_SECTIONS: readonly FormSection[] = [
  {
    title: 'The part',
    fields: [
      nameField('As it is called in the workshop: “Front wheel rim”.'),
      { type: 'text', name: 'assembly', label: 'Belongs to', suggest: 'assemblies', help: 'Frame, Engine, Sidecar body.' },
      {
        type: 'list', name: 'states', label: 'States', item: 'state', hasIds: true, whenNone: 'A part needs at least the state it is in at the start.',
        help: 'In the order they come. The first is the state at the start of the series.',
        fields: [{ type: 'text', name: 'name', label: 'State' }],
      },
      { type: 'choice', codec: 'reference', name: 'whereabouts', label: 'Where it is now', options: 'whereabouts' },
    ],
  },
];

const SORTS = ['primer', 'paint', 'filler', 'sealer', 'adhesive', 'thread locker', 'powder', 'galvanizing wash', 'release', 'other'] as const;

export const MATERIAL_SECTIONS: readonly FormSection[] = [
  {
    title: 'The material',
    fields: [
      nameField('Make and sort, as on the tin.'),
      { type: 'choice', codec: 'text', name: 'sort', label: 'Sort', options: options(SORTS) },
      {
        type: 'text', name: 'source', label: 'Where the values come from', isOptional: true,
        help: 'Data sheet and its date. Left empty, the pages say that there is no source.',
      },
    ],
  },
  {
    title: 'Drying',
    help: 'From the moment it is laid, at the temperature below. Type 30 min, 4 h or 7 d.',
    fields: [
      {
        type: 'group', name: 'stages', label: 'Stages',
        fields: [
          { type: 'length', clock: 'elapsed', name: 'touchDry', label: 'Touch dry after' },
          { type: 'length', clock: 'elapsed', name: 'recoatFrom', label: 'Ready to recoat after' },
          {
            type: 'length', clock: 'elapsed', name: 'recoatUntil', label: 'Recoat window closes after', isOptional: true,
            help: 'Empty: it never closes. Later than this it must be abraded again.',
          },
          { type: 'length', clock: 'elapsed', name: 'handle', label: 'Ready to handle after' },
          { type: 'length', clock: 'elapsed', name: 'fullCure', label: 'Fully cured after' },
        ],
      },
      { type: 'number', name: 'referenceTemperature', label: 'These times hold at', unit: '°C' },
      { type: 'number', name: 'minimumTemperature', label: 'Not below', unit: '°C', help: 'Colder than this the film may not form.' },
    ],
  },
  {
    title: 'Pot life, solvents and the rate',
    isRare: true,
    fields: [
      { type: 'length', clock: 'elapsed', name: 'potLife', label: 'Pot life', isOptional: true, help: 'Mixed material is usable this long.' },
      { type: 'date', name: 'usableUntil', label: 'Batch usable until', isOptional: true, help: 'The date on the tin in the workshop.' },
      { type: 'check', name: 'hasSolvent', label: 'Gives off solvent' },
      { type: 'check', name: 'hasIsocyanate', label: 'Contains isocyanates', help: 'By its data sheet, not by the number of packs. Filter masks do not hold it back: air-fed only.' },
      {
        type: 'group', name: 'vapour', label: 'What evaporates',
        fields: [
          { type: 'number', name: 'density', label: 'Density of the solvent', unit: 'kg/l', isOptional: true },
          { type: 'number', name: 'molarMass', label: 'Molar mass of the solvent', unit: 'g/mol', isOptional: true },
          { type: 'number', name: 'solventShare', label: 'Share that evaporates', unit: '%', scale: 100, isOptional: true },
          { type: 'number', name: 'limit', label: 'Exposure limit over eight hours', unit: 'ppm', isOptional: true },
          { type: 'text', name: 'source', label: 'Where the figures come from', isOptional: true },
        ],
      },
      {
        type: 'number', name: 'doublingPer', label: 'Dries twice as fast for every', unit: 'K warmer',
        help: '10 K is a rule of thumb; change it where the data sheet gives two temperatures.',
      },
    ],
  },
];

export const TRADE_SECTIONS: readonly FormSection[] = [
  {
    title: 'The trade',
    fields: [
      nameField('The firm.'),
      { type: 'text', name: 'craft', label: 'Craft', suggest: 'crafts', help: 'Galvanizer, plater, machinist.' },
      weeklyHours('openHours', 'Open', 'Parts are taken in and handed out in these hours.'),
      dateSpans('closed', 'Closed', 'Works holidays, both dates included.'),
      { type: 'length', clock: 'worked', name: 'trip', label: 'One trip there and back', help: 'Crew time, loading included.' },
      { type: 'text', name: 'contact', label: 'Contact', isOptional: true, help: 'Telephone, counter, whom to ask for.' },
    ],
  },
];

export const EQUIPMENT_SECTIONS: readonly FormSection[] = [
  {
    title: 'The equipment',
    fields: [
      nameField('What two tasks could fight over: “Compressor”, “Camera B”.'),
      { type: 'number', name: 'count', label: 'How many there are', unit: 'pieces' },
    ],
  },
  {
    title: 'Noise and vibration',
    isRare: true,
    help: 'Added up by person and day from the plan. Take the handbook of the tool, or measure.',
    fields: [{
      type: 'group', name: 'exposure', label: 'What it does to the person who holds it',
      fields: [
        { type: 'number', name: 'noise', label: 'Noise at the ear', unit: 'dB(A)', isOptional: true },
        { type: 'number', name: 'vibration', label: 'Hand-arm vibration', unit: 'm/s²', isOptional: true },
        { type: 'text', name: 'source', label: 'Where the figures come from', isOptional: true },
      ],
    }],
  },
];

export const SESSION_SECTIONS: readonly FormSection[] = [
  {
    title: 'The session',
    fields: [
      nameField('“Tuesday evening”.'),
      { type: 'moment', name: 'start', label: 'Starts' },
      { type: 'moment', name: 'end', label: 'Ends', help: 'A session may run past midnight.' },
      { type: 'choices', name: 'placeIds', label: 'Places open', options: 'places', whenNone: 'No place is recorded yet.' },
      { type: 'choices', name: 'crewIds', label: 'Who is in', options: 'people', whenNone: 'Nobody is recorded yet.' },
      { type: 'check', name: 'isRecording', label: 'Set up for recording', help: 'Camera and lights are out. Filmed work needs this.' },
      { type: 'check', name: 'hasDaylight', label: 'Has daylight' },
      { type: 'check', name: 'isNoiseAllowed', label: 'Noise is allowed' },
      { type: 'number', name: 'heating', label: 'Heated to', unit: '°C', isOptional: true, help: 'Empty: not heated.' },
    ],
  },
];

const STATUSES = ['planned', 'recorded', 'cut', 'cleared', 'released'] as const;

export const EPISODE_SECTIONS: readonly FormSection[] = [
  {
    title: 'The episode',
    fields: [
      nameField('Working title.'),
      { type: 'date', name: 'releaseDate', label: 'Release' },
      { type: 'choice', codec: 'text', name: 'status', label: 'Stands at', options: options(STATUSES) },
      { type: 'check', name: 'isEvergreen', label: 'May come out at any time', help: 'A reserve for a bad week.' },
    ],
  },
  {
    title: 'Captions and flashes of the cut', isRare: true, help: 'The safety checklist asks for both; each is then signed there.',
    fields: [{
      type: 'group', name: 'checks', label: 'Checked',
      fields: [
        {
          type: 'group', name: 'captions', label: 'Captions',
          fields: [
            { type: 'text', name: 'file', label: 'File of the captions', isOptional: true, help: 'Of the whole episode, cautions included.' },
            { type: 'date', name: 'readOn', label: 'Read through on', isOptional: true, help: 'Against the cut, by a person.' },
          ],
        },
        {
          type: 'group', name: 'flashes', label: 'Flashes of welding shots',
          fields: [
            { type: 'number', name: 'perSecond', label: 'Most in any second', unit: 'flashes', isOptional: true, help: 'Counted in the cut. Three at most (WCAG 2.2, 2.3.1).' },
            { type: 'text', name: 'remedy', label: 'What was done', isOptional: true, help: 'Filter, reframing, slower cuts.' },
            { type: 'date', name: 'countedOn', label: 'Counted on', isOptional: true },
          ],
        },
      ],
    }],
  },
];

const RATES = [
  { value: '24000/1001', label: '23.976' }, { value: '24/1', label: '24' }, { value: '25/1', label: '25' },
  { value: '30000/1001', label: '29.97' }, { value: '30/1', label: '30' }, { value: '50/1', label: '50' },
  { value: '60000/1001', label: '59.94' }, { value: '60/1', label: '60' },
];

export const SERIES_SECTIONS: readonly FormSection[] = [
  {
    title: 'The series',
    fields: [
      nameField('Working title of the build and its series.'),
      { type: 'text', name: 'zone', label: 'Time zone', suggest: 'zones', help: 'Area and city, such as Europe/London.' },
      { type: 'number', name: 'cadenceDays', label: 'An episode every', unit: 'days' },
      { type: 'number', name: 'leadDays', label: 'Recorded before its release by', unit: 'days', help: 'Time to edit, review, caption and upload.' },
      {
        type: 'number', name: 'fillLimit', label: 'Hours of a session that may be booked', unit: '%', scale: 100,
        help: '70 % is common practice: the rest is for what goes wrong.',
      },
      { type: 'number', name: 'frozenDays', label: 'A new plan leaves alone', unit: 'days', help: 'Work of the accepted plan that starts within so many days from now stays where it is. 0: anything may move.' },
      { type: 'number', name: 'workshopTemperature', label: 'Workshop temperature', unit: '°C', help: 'Assumed where nothing better is known.' },
    ],
  },
  {
    title: 'Picture',
    isRare: true,
    fields: [
      {
        type: 'group', name: 'runtime', label: 'Runtime of an episode',
        fields: [
          { type: 'number', name: 'min', label: 'Shortest', unit: 'min' },
          { type: 'number', name: 'target', label: 'Wished for', unit: 'min' },
          { type: 'number', name: 'max', label: 'Longest', unit: 'min' },
        ],
      },
      { type: 'choice', codec: 'ratio', name: 'frameRate', label: 'Frames a second', options: RATES },
    ],
  },
  FILMING_SECTION,
];
