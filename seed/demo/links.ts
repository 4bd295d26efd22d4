/** Orders and waits that do not follow from the states of parts. Every figure is common practice, no source. */
import { days, hours } from './draft';
import type { LinkDraft } from './draft';

export const links: readonly LinkDraft[] = [
  { id: 'link-rims-tyres', name: 'Two weeks of cure before a tyre lever (common practice, no source)', from: 'task-rims-coat-2', to: 'job-tyres', minWait: days(14) },
  { id: 'link-tin-blast-etch', name: 'Primer within four hours of blasting, else blast again', from: 'task-tin-blast', to: 'task-tin-etch', maxWait: hours(4) },
  { id: 'link-profile-prime', name: 'Paint abraded zinc within two days', from: 'task-zinc-profile', to: 'task-zinc-prime', maxWait: hours(48) },
  { id: 'link-zinc-profile', name: 'Abrade and paint the zinc before white rust shows', from: 'job-galvanize', to: 'task-zinc-profile', maxWait: days(30) },
  { id: 'link-seam-fill', name: 'Sealer through before filler beside it', from: 'task-seam-seal', to: 'task-fill', stage: 'handle' },
  { id: 'link-coupling-powder', name: 'Every hole is drilled before powder', from: 'task-trial-coupling', to: 'job-frame-powder' },
  { id: 'link-sign-hard', name: 'Finish coat hard before the sign writer rests a hand on it', from: 'task-body-coat-2', to: 'job-sign', stage: 'handle', minWait: days(5) },
  { id: 'link-gasket-turn', name: 'Jointing compound set before oil goes in', from: 'task-bottom-end', to: 'task-top-build', stage: 'fullCure' },
  { id: 'link-bleed-check', name: 'Brake held under pressure overnight', from: 'task-brake-bleed', to: 'task-leak-check', minWait: hours(12) },
  { id: 'link-locker-start', name: 'Thread locker cured before the first start', from: 'task-primary', to: 'task-first-start', stage: 'fullCure' },
  { id: 'link-bars-bleed', name: 'Lever in place before the brake is bled', from: 'task-bars', to: 'task-brake-bleed' },
  { id: 'link-saddle-start', name: 'Exhaust on before the first start', from: 'task-seat-exhaust', to: 'task-first-start' },
  { id: 'link-drums-round', name: 'All brakes before it moves', from: 'task-drums', to: 'task-yard-round' },
  { id: 'link-tins-start', name: 'Tank on before the first start', from: 'task-tin-fit', to: 'task-first-start' },
  { id: 'link-start-torque', name: 'Engine cold again before torques are checked', from: 'task-first-start', to: 'task-cold-torque', minWait: hours(8) },
  { id: 'link-round-closing', name: 'The last word comes after the round', from: 'task-cold-torque', to: 'task-closing' },
];
