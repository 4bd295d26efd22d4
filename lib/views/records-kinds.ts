/** The kinds of record in words, in the order a new crew fills them. */
import type { FormKind } from '@/lib/build';

export interface KindWords {
  readonly kind: FormKind;
  /** `Places`. */
  readonly plural: string;
  /** `place`, as in “Add a place”. */
  readonly one: string;
  /** What it is for, in one line. */
  readonly purpose: string;
  /** What to do while there is none. */
  readonly whenNone: string;
  /** In order of time instead of an order that people choose. */
  readonly isByTime: boolean;
}

export const KIND_WORDS: readonly KindWords[] = [
  {
    kind: 'place', plural: 'Places', one: 'place', isByTime: false,
    purpose: 'Where work happens, how much fits at once, and which places share air.',
    whenNone: 'Start with the bench and the spot where parts are sprayed.',
  },
  {
    kind: 'person', plural: 'People', one: 'person', isByTime: false,
    purpose: 'Who is on the crew, what each can do, and when errands are possible.',
    whenNone: 'Add yourself first, then the people who help.',
  },
  {
    kind: 'part', plural: 'Parts', one: 'part', isByTime: false,
    purpose: 'What is built, and the states each part goes through.',
    whenNone: 'Add one part with its states from as found to fitted. The order of the work follows from them.',
  },
  {
    kind: 'material', plural: 'Materials', one: 'material', isByTime: false,
    purpose: 'Paints, fillers, sealers and glues with their drying times.',
    whenNone: 'Add the paint that dries longest; its data sheet has the times.',
  },
  {
    kind: 'trade', plural: 'Trades', one: 'trade', isByTime: false,
    purpose: 'Firms outside: when they are open and how long a trip takes.',
    whenNone: 'Add a firm that takes parts away: a galvanizer, a plater, a machinist.',
  },
  {
    kind: 'equipment', plural: 'Equipment', one: 'piece of equipment', isByTime: false,
    purpose: 'What two tasks could fight over: compressor, press, second camera.',
    whenNone: 'Add only what there is too little of.',
  },
  {
    kind: 'session', plural: 'Sessions', one: 'session', isByTime: true,
    purpose: 'The evenings and weekends when somebody is in the workshop.',
    whenNone: 'Repeat a weekly evening to fill the next weeks in one go.',
  },
  {
    kind: 'episode', plural: 'Episodes', one: 'episode', isByTime: false,
    purpose: 'What comes out when; its release decides how urgent the work is.',
    whenNone: 'Add the next episode with its release.',
  },
  {
    kind: 'task', plural: 'Tasks', one: 'task', isByTime: false,
    purpose: 'The work itself: how long, who, where, which parts and how it is filmed.',
    whenNone: 'Add the first thing that has to be done.',
  },
  {
    kind: 'outsideJob', plural: 'Outside jobs', one: 'outside job', isByTime: false,
    purpose: 'Work that a trade does on your parts, and when they come back.',
    whenNone: 'Add a job once its trade and its parts are there.',
  },
  {
    kind: 'link', plural: 'Links', one: 'link', isByTime: false,
    purpose: 'An order or a wait that does not follow from the states of the parts.',
    whenNone: 'Most builds need few of these. Add one where a wait is missing.',
  },
  {
    kind: 'segment', plural: 'Segments', one: 'segment', isByTime: false,
    purpose: 'Pieces of the story, a few minutes each, in the order they are told.',
    whenNone: 'Add the first thing viewers will see.',
  },
  {
    kind: 'sponsorship', plural: 'Sponsors', one: 'sponsor obligation', isByTime: false,
    purpose: 'What is owed to sponsors, in which episode, by when, and how it is disclosed.',
    whenNone: 'Nothing is owed to anybody.',
  },
  {
    kind: 'timeLog', plural: 'Time logs', one: 'time log', isByTime: false,
    purpose: 'How long work and filming really took; estimates learn from it.',
    whenNone: 'Start one on the Now page, or type what a task took.',
  },
  {
    kind: 'coatingSystem', plural: 'Coating systems', one: 'coating system', isByTime: false,
    purpose: 'Several coats as one: laid on a part, it becomes the tasks of each coat with their waits.',
    whenNone: 'Add primer, filler and topcoat in the order they go on.',
  },
  {
    kind: 'heatingRun', plural: 'Heating runs', one: 'heating run', isByTime: true,
    purpose: 'Heating besides the sessions: a night, a weekend, a coat that must not get cold.',
    whenNone: 'Sessions heat by themselves. Add a run where a coat has to be kept warm after one.',
  },
  {
    kind: 'weather', plural: 'Weather', one: 'weather table', isByTime: false,
    purpose: 'Lows and highs of days. A day a month gives a rough climate; days between are filled in.',
    whenNone: 'Without weather, every coat is counted at one temperature of the workshop.',
  },
  {
    kind: 'readings', plural: 'Readings', one: 'set of readings', isByTime: true,
    purpose: 'What a logger measured in the workshop; it overrules the model where it exists.',
    whenNone: 'Import the file of a logger on the Climate page.',
  },
  {
    kind: 'camera', plural: 'Cameras', one: 'camera', isByTime: false,
    purpose: 'How each camera counts frames and how its clock stands, so that takes can be found.',
    whenNone: 'Add the camera whose takes are logged.',
  },
  {
    kind: 'promise', plural: 'Promises', one: 'promise', isByTime: false,
    purpose: 'What was promised to viewers on camera, and how each promise ended.',
    whenNone: 'Add a promise the moment it is spoken: viewers remember.',
  },
  {
    kind: 'hazard', plural: 'Hazards of your own', one: 'hazard', isByTime: false,
    purpose: 'What the library of hazards does not know, or what is different where you live.',
    whenNone: 'The library comes with the program. Copy one of it on the page of hazards, or write one here.',
  },
];

export function wordsOfKind(kind: FormKind): KindWords {
  const words = KIND_WORDS.find((entry) => entry.kind === kind);
  if (words === undefined) throw new Error(`No words for records of kind ${kind}`);
  return words;
}
