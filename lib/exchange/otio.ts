/** Timelines as OpenTimelineIO JSON: one track of clips with gaps between them, and markers. */
import type { FrameRate } from '@/lib/footage';
import { fail, issue, ok, type Result } from '@/lib/result';
import { z } from 'zod';

export const MARKER_COLOURS = ['RED', 'ORANGE', 'YELLOW', 'GREEN', 'CYAN', 'BLUE', 'PURPLE', 'MAGENTA', 'PINK', 'BLACK', 'WHITE'] as const;

export interface TimelineMarker {
  readonly name: string;
  /** Frames from the start of its clip's media. */
  readonly frame: number;
  readonly length: number;
  readonly colour: (typeof MARKER_COLOURS)[number];
}

export interface TimelineClip {
  readonly name: string;
  /** Frames of silence and black ahead of it. */
  readonly gap: number;
  /** First frame by the media's own count, and how many. */
  readonly start: number;
  readonly length: number;
  /** Where the picture lies; empty: not known. */
  readonly media: string;
  readonly markers: readonly TimelineMarker[];
  /** Own data; kept under the program's name. */
  readonly notes: Readonly<Record<string, string>>;
}

export interface Timeline {
  readonly name: string;
  readonly rate: FrameRate;
  readonly clips: readonly TimelineClip[];
}

const SPACE = 'benchtake';

function common(name: string, own: Readonly<Record<string, unknown>> = {}) {
  return { name, metadata: Object.keys(own).length > 0 ? { [SPACE]: own } : {} };
}

/** Writes a timeline; every object names its schema, and own data lies under one key of the metadata. */
export function writeOtio(timeline: Timeline): string {
  const rate = timeline.rate.numerator / timeline.rate.denominator;
  const time = (value: number) => ({ OTIO_SCHEMA: 'RationalTime.1', rate, value });
  const range = (start: number, length: number) => ({ OTIO_SCHEMA: 'TimeRange.1', start_time: time(start), duration: time(length) });
  const marker = (one: TimelineMarker) => ({ OTIO_SCHEMA: 'Marker.2', ...common(one.name), color: one.colour, comment: '', marked_range: range(one.frame, one.length) });
  const clip = (one: TimelineClip) => ({
    OTIO_SCHEMA: 'Clip.2', ...common(one.name, one.notes), source_range: range(one.start, one.length), effects: [], markers: one.markers.map(marker), enabled: true,
    active_media_reference_key: 'DEFAULT_MEDIA',
    media_references: {
      DEFAULT_MEDIA: one.media === ''
        ? { OTIO_SCHEMA: 'MissingReference.1', ...common(''), available_range: null, available_image_bounds: null }
        : { OTIO_SCHEMA: 'ExternalReference.1', ...common(''), available_range: null, available_image_bounds: null, target_url: one.media },
    },
  });
  const gap = (length: number) => ({ OTIO_SCHEMA: 'Gap.1', ...common(''), source_range: range(0, length), effects: [], markers: [], enabled: true });
  const children = timeline.clips.flatMap((one) => [...(one.gap > 0 ? [gap(one.gap)] : []), clip(one)]);
  return `${JSON.stringify({
    OTIO_SCHEMA: 'Timeline.1', ...common(timeline.name, { numerator: timeline.rate.numerator, denominator: timeline.rate.denominator }), global_start_time: null,
    tracks: {
      OTIO_SCHEMA: 'Stack.1', ...common('tracks'), source_range: null, effects: [], markers: [], enabled: true,
      children: [{ OTIO_SCHEMA: 'Track.1', ...common('Takes'), kind: 'Video', source_range: null, effects: [], markers: [], enabled: true, children }],
    },
  }, null, 2)}\n`;
}

const rational = z.object({ OTIO_SCHEMA: z.literal('RationalTime.1'), rate: z.number().positive(), value: z.number() });
const timeRange = z.object({ OTIO_SCHEMA: z.literal('TimeRange.1'), start_time: rational, duration: rational });
const metadata = z.record(z.string(), z.unknown()).default({});
const markerShape = z.object({ OTIO_SCHEMA: z.literal('Marker.2'), name: z.string(), color: z.enum(MARKER_COLOURS), marked_range: timeRange });
const reference = z.union([
  z.looseObject({ OTIO_SCHEMA: z.literal('ExternalReference.1'), target_url: z.string() }),
  z.looseObject({ OTIO_SCHEMA: z.literal('MissingReference.1') }),
]);
const clipShape = z.object({
  OTIO_SCHEMA: z.literal('Clip.2'), name: z.string(), metadata, source_range: timeRange, markers: z.array(markerShape).default([]),
  active_media_reference_key: z.string(), media_references: z.record(z.string(), reference),
});
const gapShape = z.object({ OTIO_SCHEMA: z.literal('Gap.1'), source_range: timeRange });
const timelineShape = z.object({
  OTIO_SCHEMA: z.literal('Timeline.1'), name: z.string(), metadata,
  tracks: z.object({
    OTIO_SCHEMA: z.literal('Stack.1'),
    children: z.array(z.object({ OTIO_SCHEMA: z.literal('Track.1'), kind: z.string(), children: z.array(z.union([clipShape, gapShape])) })).min(1),
  }),
});
const ownRate = z.object({ numerator: z.number().int().positive(), denominator: z.number().int().positive() });
const ownNotes = z.record(z.string(), z.string());

function readClip(clip: z.output<typeof clipShape>, gap: number): TimelineClip {
  const media = clip.media_references[clip.active_media_reference_key];
  const notes = ownNotes.safeParse(clip.metadata[SPACE]);
  return {
    name: clip.name, gap, start: clip.source_range.start_time.value, length: clip.source_range.duration.value,
    media: media !== undefined && 'target_url' in media && typeof media.target_url === 'string' ? media.target_url : '',
    markers: clip.markers.map((one) => ({ name: one.name, frame: one.marked_range.start_time.value, length: one.marked_range.duration.value, colour: one.color })),
    notes: notes.success ? notes.data : {},
  };
}

/** Reads the first track of a timeline. Fails with `otio-unreadable`, saying where it is no such timeline. */
export function readOtio(text: string): Result<Timeline> {
  let json: unknown;
  try {
    json = JSON.parse(text);
  } catch {
    return fail([issue('otio-unreadable', 'This file is not JSON.', 'Choose a file that ends in .otio.')]);
  }
  const read = timelineShape.safeParse(json);
  if (!read.success) {
    return fail(read.error.issues.map((found) => issue('otio-unreadable', `The timeline cannot be read at ${found.path.join('.') || 'its start'}: ${found.message}.`, 'Write it again with a program that knows OpenTimelineIO.', {
      path: found.path.filter((step) => typeof step !== 'symbol'),
    })));
  }
  const own = ownRate.safeParse(read.data.metadata[SPACE]);
  let gap = 0;
  const clips: TimelineClip[] = [];
  let found: number | null = null;
  for (const child of read.data.tracks.children[0]?.children ?? []) {
    found ??= child.source_range.duration.rate;
    if (child.OTIO_SCHEMA === 'Gap.1') gap += child.source_range.duration.value;
    else {
      clips.push(readClip(child, gap));
      gap = 0;
    }
  }
  return ok({ name: read.data.name, rate: own.success ? own.data : { numerator: found ?? 25, denominator: 1 }, clips });
}
