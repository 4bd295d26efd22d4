/** The story in pieces, what is owed to sponsors, and what the first tasks really took. */
import type { Segment, Sponsorship, TimeLog } from '@/lib/build';
import type { Moment } from './draft';

export interface SegmentDraft {
  readonly id: string;
  readonly name: string;
  readonly episode: string | null;
  readonly role: Segment['role'];
  /** Minutes on screen. */
  readonly length: number;
  /** Percent. */
  readonly hook?: number;
  readonly hang?: number;
  readonly result?: true;
  readonly thread?: string;
  readonly evergreen?: true;
  readonly ending?: Segment['ending'];
  readonly tasks?: readonly string[];
}

export interface LogDraft {
  readonly id: string;
  readonly name: string;
  readonly task: string;
  readonly activity: TimeLog['activity'];
  readonly from: Moment;
  readonly to: Moment;
  readonly interrupted?: true;
}

export interface SponsorDraft {
  readonly id: string;
  readonly name: string;
  readonly sponsor: string;
  readonly what: string;
  readonly exclusiveIn?: string;
  readonly episode: string | null;
  readonly part?: Sponsorship['part'];
  readonly dueDay?: number;
  readonly seconds: number;
  readonly spot?: readonly [start: number, end: number];
  readonly text: string;
  readonly spoken?: number;
  readonly shown?: readonly [start: number, end: number];
  readonly approval?: true;
}

export const segments: readonly SegmentDraft[] = [
  { id: 'seg-sheet-off', name: 'The sheet comes off', episode: 'ep-tarpaulin', role: 'opening', length: 1.5, hook: 90, hang: 20, tasks: ['task-as-found'] },
  { id: 'seg-delivery-book', name: 'What the delivery book says', episode: 'ep-tarpaulin', role: 'talk', length: 3, hook: 30, hang: 30, tasks: ['task-as-found'] },
  { id: 'seg-numbers', name: 'Two numbers and a rule', episode: 'ep-tarpaulin', role: 'teaching', length: 2.5, hook: 20, hang: 10, ending: 'never ends it', tasks: ['task-as-found'] },
  { id: 'seg-apart', name: 'Sidecar and machine part', episode: 'ep-tarpaulin', role: 'work', length: 4, hook: 60, hang: 40, tasks: ['task-separate'] },
  { id: 'seg-engine-lifts', name: 'The engine clears the cradle', episode: 'ep-tarpaulin', role: 'result', length: 4.5, hook: 70, hang: 50, result: true, tasks: ['task-engine-out'] },
  { id: 'seg-loose-balls', name: 'Forty loose balls', episode: 'ep-down-to-frame', role: 'trouble', length: 4, hook: 80, hang: 30, tasks: ['task-front-strip'] },
  { id: 'seg-drums', name: 'What is left of the drums', episode: 'ep-down-to-frame', role: 'work', length: 3.5, hook: 20, hang: 40, tasks: ['task-rear-strip'] },
  { id: 'seg-spokes', name: 'Cutting 108 spokes', episode: 'ep-down-to-frame', role: 'work', length: 3, hook: 50, hang: 10, tasks: ['task-unlace'] },
  { id: 'seg-box-off', name: 'The box comes off its chassis', episode: 'ep-down-to-frame', role: 'work', length: 3, hook: 40, hang: 60, tasks: ['task-body-off'] },
  { id: 'seg-bare-frame', name: 'A bare frame on the bench', episode: 'ep-down-to-frame', role: 'result', length: 2.5, hook: 30, hang: 70, result: true, tasks: ['task-frame-bare'] },
  { id: 'seg-caliper-rules', name: 'What may be done to a caliper', episode: 'ep-stuck-pistons', role: 'teaching', length: 4, hook: 40, hang: 10, ending: 'never ends it', tasks: ['task-caliper-talk'] },
  { id: 'seg-pistons-move', name: 'Will the pistons move?', episode: 'ep-stuck-pistons', role: 'trouble', length: 5, hook: 90, hang: 80, tasks: ['task-caliper-pistons'] },
  { id: 'seg-micrometer', name: 'Pitted, or only dirty', episode: 'ep-stuck-pistons', role: 'work', length: 3.5, hook: 30, hang: 30, tasks: ['task-caliper-clean'] },
  { id: 'seg-caliper-built', name: 'A caliper that slides again', episode: 'ep-stuck-pistons', role: 'result', length: 3, hook: 40, hang: 40, result: true, tasks: ['task-caliper-reseal'] },
  { id: 'seg-gearbox-open', name: 'Sixty years of oil', episode: 'ep-gearbox', role: 'opening', length: 3, hook: 70, hang: 30, tasks: ['task-gearbox'] },
  { id: 'seg-three-gears', name: 'Three gears on the bench', episode: 'ep-gearbox', role: 'teaching', length: 6, hook: 40, hang: 20, tasks: ['task-gearbox-talk'] },
  { id: 'seg-gearbox-shut', name: 'It changes by hand', episode: 'ep-gearbox', role: 'result', length: 3.5, hook: 30, hang: 50, result: true, tasks: ['task-gearbox'] },
  { id: 'seg-top-end', name: 'Under the head', episode: 'ep-oversize', role: 'work', length: 3.5, hook: 50, hang: 50, tasks: ['task-top-end'] },
  { id: 'seg-studs', name: 'Two studs that will not give', episode: 'ep-oversize', role: 'trouble', length: 6, hook: 90, hang: 70, ending: 'never ends it', tasks: ['task-studs'] },
  { id: 'seg-split', name: 'The cases come apart', episode: 'ep-oversize', role: 'work', length: 3, hook: 50, hang: 40, tasks: ['task-split'] },
  { id: 'seg-measured', name: 'Forty thou over', episode: 'ep-oversize', role: 'result', length: 3, hook: 30, hang: 60, result: true, tasks: ['task-measure'] },
  { id: 'seg-sign-traced', name: 'Letter by letter onto film', episode: 'ep-cutting-floor', role: 'work', length: 4, hook: 60, hang: 30, tasks: ['task-sign-record'] },
  { id: 'seg-sign-gone', name: 'Sixty years flatted away', episode: 'ep-cutting-floor', role: 'trouble', length: 3.5, hook: 80, hang: 80, tasks: ['task-sign-flat'] },
  { id: 'seg-floor-out', name: 'The floor was never there', episode: null, role: 'work', length: 5, hook: 70, hang: 50, tasks: ['task-floor-cut'] },
  { id: 'seg-rims-bare', name: 'Three rims, bare metal', episode: null, role: 'work', length: 4, hook: 30, hang: 20, tasks: ['task-rims-abrade'] },
  { id: 'seg-rims-done', name: 'Three rims in black', episode: null, role: 'result', length: 4, hook: 40, hang: 40, result: true, tasks: ['task-rims-coat-2'] },
  { id: 'seg-spanner-sizes', name: 'Why no spanner fits', episode: null, role: 'teaching', length: 3, hook: 40, evergreen: true },
  { id: 'seg-five-threads', name: 'Five threads side by side', episode: 'ep-threads', role: 'teaching', length: 9, hook: 50, result: true, evergreen: true, tasks: ['task-threads', 'task-threads-talk'] },
];

export const logs: readonly LogDraft[] = [
  { id: 'log-as-found', name: 'Film the outfit as found', task: 'task-as-found', activity: 'hands-on', from: { day: -7, at: '10:40' }, to: { day: -7, at: '11:35' } },
  { id: 'log-as-found-camera', name: 'Piece to camera, third go', task: 'task-as-found', activity: 'filming', from: { day: -7, at: '11:35' }, to: { day: -7, at: '12:10' } },
  { id: 'log-bright-off', name: 'Take off the bright parts', task: 'task-bright-off', activity: 'hands-on', from: { day: -6, at: '18:45' }, to: { day: -6, at: '21:05' } },
  { id: 'log-separate', name: 'Part the sidecar', task: 'task-separate', activity: 'hands-on', from: { day: -4, at: '18:40' }, to: { day: -4, at: '20:20' } },
  { id: 'log-separate-camera', name: 'Camera moved twice', task: 'task-separate', activity: 'filming', from: { day: -4, at: '20:20' }, to: { day: -4, at: '20:45' } },
  { id: 'log-drain', name: 'Drain petrol and oils', task: 'task-drain', activity: 'hands-on', from: { day: -2, at: '09:50' }, to: { day: -2, at: '10:40' } },
  { id: 'log-engine-out', name: 'Lift the engine', task: 'task-engine-out', activity: 'hands-on', from: { day: -1, at: '12:20' }, to: { day: -1, at: '15:45' } },
  { id: 'log-engine-out-camera', name: 'Second angle of the lift', task: 'task-engine-out', activity: 'filming', from: { day: -1, at: '15:45' }, to: { day: -1, at: '16:20' } },
  { id: 'log-front-strip', name: 'Forks started, phone rang', task: 'task-front-strip', activity: 'hands-on', from: { day: -1, at: '16:25' }, to: { day: -1, at: '16:50' }, interrupted: true },
];

export const sponsors: readonly SponsorDraft[] = [
  {
    id: 'sponsor-oil', name: 'Penetrating oil on the couplings', sponsor: 'Canal Wharf Oils', what: 'Can in frame and in use, one spoken sentence about what it is for. No claim about what it frees.',
    exclusiveIn: 'penetrating oil', episode: 'ep-tarpaulin', part: 'second third', dueDay: 14, seconds: 30, spot: [420, 455], text: 'Paid promotion', spoken: 418, shown: [417, 423], approval: true,
  },
  {
    id: 'sponsor-discs', name: 'Abrasive discs on the rims', sponsor: 'Arch Abrasives', what: 'Discs in use with breathing protection on, size and grit named.',
    exclusiveIn: 'abrasives', episode: 'ep-three-rims', dueDay: 60, seconds: 45, text: 'Paid promotion',
  },
  { id: 'sponsor-apron', name: 'Workshop aprons', sponsor: 'Bread and Canvas', what: 'Worn by whoever is in frame, named once in the credits.', episode: null, dueDay: 90, seconds: 5, text: 'Aprons were a gift' },
];
