/** What is asked about cameras and about promises made on camera. */
import type { FormSection } from './record-form-model';
import { nameField, options } from './record-form-parts';

const RATES = [
  { value: '25/1', label: '25' }, { value: '24000/1001', label: '23.976' }, { value: '24/1', label: '24' },
  { value: '30000/1001', label: '29.97' }, { value: '30/1', label: '30' }, { value: '48000/1001', label: '47.952' },
  { value: '48/1', label: '48' }, { value: '50/1', label: '50' }, { value: '60000/1001', label: '59.94' }, { value: '60/1', label: '60' },
];

export const CAMERA_SECTIONS: readonly FormSection[] = [
  {
    title: 'The camera',
    fields: [
      nameField('What you call it: “A”, “Bench camera”.'),
      { type: 'choice', codec: 'ratio', name: 'rate', label: 'Frames a second', options: RATES },
      { type: 'check', name: 'isDropFrame', label: 'Drop-frame timecode', help: 'Labels with a semicolon; at 29.97 and 59.94 only.' },
      {
        type: 'number', name: 'clockOffset', label: 'Its clock runs ahead by', unit: 's',
        help: 'Film the workshop clock once and read the difference. Negative: it runs behind.',
      },
    ],
  },
];

const CLOSURES = ['open', 'kept', 'replaced', 'withdrawn on screen'] as const;

export const PROMISE_SECTIONS: readonly FormSection[] = [
  {
    title: 'The promise',
    fields: [
      nameField('The words as spoken: “Next week it runs”.'),
      { type: 'choice', codec: 'text', name: 'saidInId', label: 'Said in', options: 'episodes', none: 'Not in an episode yet' },
      { type: 'text', name: 'where', label: 'Where', isOptional: true, help: 'Take, clip or timecode.' },
      { type: 'choice', codec: 'text', name: 'dueId', label: 'Due in', options: 'episodes', none: 'By the end of the series' },
    ],
  },
  {
    title: 'How it ended',
    fields: [
      { type: 'choice', codec: 'text', name: 'closure', label: 'It is', options: options(CLOSURES) },
      { type: 'text', name: 'reason', label: 'Reason', isOptional: true, isLong: true, help: 'Needed when it is replaced or withdrawn: what is said on screen.' },
      { type: 'choice', codec: 'text', name: 'closedInId', label: 'Ended in', options: 'episodes', none: 'Not in an episode yet' },
    ],
  },
];
