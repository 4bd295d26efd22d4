/** A small hand-made plan of the sample series: the first week's work, a coat that dries over it, a wheel that is away. */
import type { BlockKind, PlanBlock, PlanResult, SavedPlan } from '@/lib/plan';
import { instant, minutes, type Instant } from '@/lib/units';
import { at } from '../build/sample-series';

const NO_BLOCK: Omit<PlanBlock, 'id' | 'kind' | 'subject' | 'title' | 'start' | 'end' | 'pieces'> = {
  placeId: null, crewIds: [], partIds: [], episodeId: null, isPinned: false, stages: null, because: [],
};

const KINDS: readonly BlockKind[] = ['task', 'before-shot', 'drop-off', 'collection', 'away', 'cure'];

/** A block worked in one or more pieces, each a pair of moments. */
export function block(id: string, title: string, pieces: readonly (readonly [Instant, Instant])[], more: Partial<PlanBlock> = {}): PlanBlock {
  const [word, subject = ''] = id.split(':');
  const kind = KINDS.find((one) => one === word) ?? 'task';
  const isTask = kind === 'task' || kind === 'before-shot' || kind === 'cure';
  return {
    ...NO_BLOCK,
    id,
    kind,
    subject: { kind: isTask ? 'task' : 'outsideJob', id: subject },
    title,
    start: pieces[0]?.[0] ?? instant(0),
    end: pieces.at(-1)?.[1] ?? instant(0),
    pieces: pieces.map(([start, end]) => ({ start, end })),
    ...more,
  };
}

export const SAMPLE_BLOCKS: readonly PlanBlock[] = [
  block('before-shot:task-strip', 'Before-shots: Strip the frame', [[at('2026-12-03', '18:30'), at('2026-12-03', '18:50')]], {
    placeId: 'place-bench', crewIds: ['person-kim'], partIds: ['part-frame'], episodeId: 'episode-1',
  }),
  block('task:task-strip', 'Strip the frame', [[at('2026-12-03', '18:50'), at('2026-12-03', '20:40')]], {
    placeId: 'place-bench', crewIds: ['person-robin'], partIds: ['part-frame'], episodeId: 'episode-1',
    because: [{ text: 'Cannot be undone, so its before-shots come first.', until: at('2026-12-03', '18:50'), change: null, blockId: 'before-shot:task-strip' }],
  }),
  block('task:task-clean', 'Clean the frame', [[at('2026-12-05', '10:00'), at('2026-12-05', '14:00')]], {
    placeId: 'place-bench', crewIds: ['person-robin'], partIds: ['part-frame'], episodeId: 'episode-1',
  }),
  block('task:task-prime', 'Prime the frame', [[at('2026-12-05', '15:00'), at('2026-12-05', '16:10')]], {
    placeId: 'place-spray', crewIds: ['person-robin'], partIds: ['part-frame'], episodeId: 'episode-1',
  }),
  block('cure:task-prime', 'Grey primer on Frame', [[at('2026-12-05', '16:10'), at('2026-12-07', '06:00')]], {
    placeId: 'place-spray', partIds: ['part-frame'], episodeId: 'episode-1',
  }),
  block('drop-off:job-wheel', 'Drop off: Powder coat the wheel', [[at('2026-12-01', '12:00'), at('2026-12-01', '13:00')]], {
    crewIds: ['person-robin'], partIds: ['part-wheel'], episodeId: 'episode-2',
  }),
  block('away:job-wheel', 'Wheel at Canal Street Coaters', [[at('2026-12-01', '13:00'), at('2026-12-07', '12:00')]], {
    partIds: ['part-wheel'], episodeId: 'episode-2',
  }),
  block('collection:job-wheel', 'Collect: Powder coat the wheel', [[at('2026-12-08', '12:00'), at('2026-12-08', '13:00')]], {
    crewIds: ['person-robin'], partIds: ['part-wheel'], episodeId: 'episode-2',
  }),
  block('task:task-paint', 'Paint the frame', [[at('2026-12-12', '10:00'), at('2026-12-12', '11:10')]], {
    placeId: 'place-spray', crewIds: ['person-robin'], partIds: ['part-frame'], episodeId: 'episode-2',
    because: [{ text: 'Waits for the primer.', until: at('2026-12-07', '06:00'), change: null, blockId: 'cure:task-prime' }],
  }),
  block('task:task-fit', 'Fit the wheel', [[at('2026-12-15', '18:30'), at('2026-12-15', '19:40')]], {
    placeId: 'place-bench', crewIds: ['person-robin', 'person-kim'], partIds: ['part-frame', 'part-wheel'], episodeId: 'episode-2',
  }),
];

const RESULT: PlanResult = {
  blocks: SAMPLE_BLOCKS,
  unplaced: [{ subject: { kind: 'task', id: 'task-closing' }, title: 'Closing words beside the frame', because: [{ text: 'No session with both is left.', until: null, change: 'Add a session.', blockId: null }] }],
  episodes: [
    { episodeId: 'episode-1', shootDue: at('2026-12-06', '00:00'), recordedBy: at('2026-12-05', '16:10'), late: minutes(0) },
    { episodeId: 'episode-2', shootDue: at('2026-12-30', '00:00'), recordedBy: null, late: minutes(0) },
  ],
  status: 'feasible',
  finish: at('2026-12-15', '19:40'),
  earliestFinish: at('2026-12-15', '19:40'),
  schedulesTried: 40,
  seed: 1,
  solveTime: 120,
  from: '2026-11-30',
  to: '2026-12-19',
};

/** The plan as accepted; `more` changes its result. */
export function samplePlan(more: Partial<PlanResult> = {}, head: Partial<SavedPlan> = {}): SavedPlan {
  return {
    id: 'series-sample:3', number: 3, status: 'accepted', madeAt: at('2026-11-29', '20:00'), acceptedAt: at('2026-11-29', '20:05'), basedOnChange: 0,
    result: { ...RESULT, ...more }, ...head,
  };
}
