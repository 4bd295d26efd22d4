/** Seventeen episodes, a week apart, and one that can air at any time. Days from the starting Monday. */
import type { EpisodeDraft } from './draft';

export const episodes: readonly EpisodeDraft[] = [
  { id: 'ep-tarpaulin', name: 'Under the tarpaulin', releaseDay: 11, status: 'recorded' },
  { id: 'ep-down-to-frame', name: 'Down to the frame', releaseDay: 18 },
  { id: 'ep-stuck-pistons', name: 'Stuck pistons', releaseDay: 25, captions: { file: 'stuck-pistons-cut-1.vtt', day: -1 } },
  { id: 'ep-gearbox', name: 'Three gears', releaseDay: 32 },
  { id: 'ep-oversize', name: 'Oversize', releaseDay: 39 },
  { id: 'ep-cutting-floor', name: 'The sign and the floor', releaseDay: 46 },
  { id: 'ep-three-rims', name: 'Three rims', releaseDay: 53 },
  { id: 'ep-zinc', name: 'Zinc, then paint', releaseDay: 60 },
  { id: 'ep-powder', name: 'Powder and bearings', releaseDay: 67 },
  { id: 'ep-tinware', name: 'Tinware', releaseDay: 74 },
  { id: 'ep-seams', name: 'Seams', releaseDay: 81 },
  { id: 'ep-turning-over', name: 'Turning over', releaseDay: 88 },
  { id: 'ep-filler-patience', name: 'Coach enamel and patience', releaseDay: 95 },
  { id: 'ep-tyres', name: 'Two weeks for a tyre', releaseDay: 102 },
  { id: 'ep-wiring', name: 'Forty wires', releaseDay: 109 },
  { id: 'ep-sign', name: 'The bakery is back', releaseDay: 116 },
  { id: 'ep-first-round', name: 'First round', releaseDay: 123 },
  { id: 'ep-threads', name: 'Five threads on one machine', releaseDay: 130, evergreen: true },
];
