/** What is asked about segments, time logs and sponsor obligations, and about how a series films. */
import { SPEECH_RATE } from '@/lib/estimate';
import type { FieldSpec, FormSection } from './record-form-model';
import { nameField, options } from './record-form-parts';

const ROLES = ['opening', 'work', 'teaching', 'trouble', 'result', 'talk', 'sponsor', 'closing'] as const;
const ENDINGS = ['free', 'ends the episode', 'never ends it'] as const;

const episode = (help: string): FieldSpec => ({
  type: 'choice', codec: 'text', name: 'episodeId', label: 'Episode', options: 'episodes', none: 'No episode yet', isOptional: true, help,
});

export const SEGMENT_SECTIONS: readonly FormSection[] = [
  {
    title: 'The segment',
    fields: [
      nameField('What the viewer sees: “The seized stud gives in”.'),
      { type: 'choice', codec: 'text', name: 'role', label: 'Role', options: options(ROLES) },
      { type: 'number', name: 'length', label: 'Length on screen', unit: 'min', help: `2.5 is two and a half minutes. Speech: about ${SPEECH_RATE} words a minute.` },
      episode('Leave it open and let the board propose one.'),
      { type: 'choices', name: 'taskIds', label: 'Work it shows', options: 'tasks', isOptional: true, whenNone: 'No task is recorded yet.' },
      { type: 'check', name: 'isResult', label: 'Shows something finished' },
    ],
  },
  {
    title: 'How it pulls',
    fields: [
      { type: 'number', name: 'hook', label: 'Makes people want to see it', unit: '%', scale: 100, help: '0 for plain work, 100 for the strongest opening.' },
      { type: 'number', name: 'hang', label: 'Leaves something open at its end', unit: '%', scale: 100, help: 'Good last segments leave a question for the next episode.' },
      { type: 'choice', codec: 'text', name: 'ending', label: 'As the last one of an episode', options: options(ENDINGS, { free: 'may end it' }) },
    ],
  },
  {
    title: 'Order of the story',
    isRare: true,
    fields: [
      { type: 'text', name: 'thread', label: 'Thread', suggest: 'threads', isOptional: true, help: 'Segments of one thread keep their order. Empty: the main thread.' },
      { type: 'check', name: 'isEvergreen', label: 'Fits any episode' },
      { type: 'check', name: 'isFlashback', label: 'Goes back in the story on purpose' },
      { type: 'date', name: 'storyDate', label: 'Day of the story', isOptional: true, help: 'Only where it differs from the day its work is done.' },
      { type: 'number', name: 'cutStart', label: 'Starts in the cut at', unit: 's', isOptional: true, help: 'From the start of the episode, once it is cut. Empty: estimated from the lengths before it.' },
    ],
  },
];

export const TIME_LOG_SECTIONS: readonly FormSection[] = [
  {
    title: 'Time spent',
    fields: [
      nameField('A word about it.'),
      { type: 'choice', codec: 'text', name: 'taskId', label: 'Task', options: 'tasks' },
      { type: 'choice', codec: 'text', name: 'activity', label: 'What was done', options: options(['hands-on', 'filming']) },
      { type: 'moment', name: 'start', label: 'Started' },
      { type: 'moment', name: 'end', label: 'Stopped', isOptional: true, help: 'Empty: still going on.' },
      { type: 'check', name: 'wasInterrupted', label: 'It was interrupted', help: 'Then it is kept, and estimates do not learn from it.' },
    ],
  },
];

export const SPONSORSHIP_SECTIONS: readonly FormSection[] = [
  {
    title: 'What is owed',
    fields: [
      nameField('In a few words: “Discs in use, spoken”.'),
      { type: 'text', name: 'sponsor', label: 'Sponsor', suggest: 'sponsors' },
      { type: 'text', name: 'what', label: 'What was agreed', isLong: true, isOptional: true },
      episode('The episode that carries it.'),
      { type: 'choice', codec: 'text', name: 'part', label: 'Where in the episode', options: options(['anywhere', 'first third', 'second third', 'last third']) },
      { type: 'date', name: 'dueDate', label: 'Released by', isOptional: true },
      { type: 'number', name: 'minimumSeconds', label: 'At least', unit: 's' },
      { type: 'text', name: 'exclusiveIn', label: 'No competitor in', isOptional: true, help: 'The trade they were promised for themselves: abrasives. Empty: none.' },
      { type: 'check', name: 'needsApproval', label: 'They approve the cut' },
    ],
  },
  {
    title: 'Disclosure',
    help: 'That it is paid for is said and shown before the claim. Seconds count from the start of the episode.',
    fields: [
      { type: 'text', name: 'disclosureText', label: 'Words on screen', isOptional: true },
      { type: 'number', name: 'spokenAt', label: 'Said at', unit: 's', isOptional: true },
      { type: 'number', name: 'shownFrom', label: 'Shown from', unit: 's', isOptional: true },
      { type: 'number', name: 'shownUntil', label: 'Shown until', unit: 's', isOptional: true },
    ],
  },
  {
    title: 'In the cut',
    fields: [
      { type: 'number', name: 'spotStart', label: 'Starts at', unit: 's', isOptional: true },
      { type: 'number', name: 'spotEnd', label: 'Ends at', unit: 's', isOptional: true },
      { type: 'date', name: 'approvedOn', label: 'Approved on', isOptional: true },
    ],
  },
];

const COVERAGES = ['locked-off', 'moved camera', 'inserts and teaching', 'piece to camera', 'time-lapse', 'montage'] as const;

const filming: FieldSpec = {
  type: 'group', name: 'filming', label: 'Time that filming takes', help: 'Common practice, no source: change them to what you find.',
  fields: [
    { type: 'number', name: 'position', label: 'A new camera position', unit: 'min' },
    { type: 'number', name: 'shot', label: 'A shot', unit: 'min' },
    { type: 'number', name: 'take', label: 'A further take', unit: 'min' },
    { type: 'number', name: 'reset', label: 'Putting the scene back', unit: 'min' },
    { type: 'number', name: 'retakeChance', label: 'Takes that are not good', unit: '%', scale: 100 },
    { type: 'number', name: 'oneWay', label: 'Getting ready for a step that happens once', unit: 'min' },
    { type: 'number', name: 'packUp', label: 'Putting camera and lights away', unit: 'min' },
    {
      type: 'list', name: 'own', label: 'Own counts for a way of filming', item: 'way of filming', isOptional: true,
      whenNone: 'Common practice for every way. Add the one that you film otherwise; shots listed in a task go before both.',
      fields: [
        { type: 'choice', codec: 'text', name: 'coverage', label: 'Filmed', options: options(COVERAGES) },
        { type: 'number', name: 'positions', label: 'Positions at least', unit: 'positions' },
        { type: 'number', name: 'positionsPerHour', label: 'More for each hour of work', unit: 'positions' },
        { type: 'number', name: 'shots', label: 'Shots at least', unit: 'shots' },
        { type: 'number', name: 'shotsPerHour', label: 'More for each hour of work', unit: 'shots' },
      ],
    },
  ],
};

const camera: FieldSpec = {
  type: 'group', name: 'camera', label: 'Cameras, cards and batteries',
  fields: [
    { type: 'number', name: 'cameras', label: 'Cameras', unit: 'cameras' },
    { type: 'number', name: 'bitRate', label: 'One camera records', unit: 'Mb/s' },
    { type: 'lines', name: 'cards', label: 'Cards', isOptional: true, help: 'The gigabytes of each card, one a line.' },
    { type: 'number', name: 'fillLimit', label: 'Cards are filled to', unit: '%', scale: 100 },
    { type: 'number', name: 'batteries', label: 'Batteries', unit: 'batteries', help: '0: the cameras run on mains.' },
    { type: 'number', name: 'batteryMinutes', label: 'A battery records', unit: 'min' },
  ],
};

/** Part of the form of the series. */
export const FILMING_SECTION: FormSection = {
  title: 'Filming and episodes in hand',
  isRare: true,
  fields: [
    { type: 'check', name: 'usesExperience', label: 'Plan by experience', help: 'Book what filming takes and what finished work has shown, instead of what was typed.' },
    { type: 'number', name: 'titles', label: 'Titles and credits', unit: 'min' },
    { type: 'number', name: 'bankMinimum', label: 'Finished episodes to have in hand', unit: 'episodes', help: 'Two to four are common practice, no source.' },
    filming,
    camera,
  ],
};
