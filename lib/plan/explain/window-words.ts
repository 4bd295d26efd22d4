/** Recoat windows in words: why a plan adds work of its own, and what a kept window asks for. */
import type { Task } from '@/lib/build';
import { formatLength, formatMoment } from '@/lib/calendar';
import type { CoatMaterial } from '@/lib/cure';
import { coatMaterialOf } from '@/lib/cure';
import type { Draft, KeptWindow, LateWork } from '../compile/draft';
import type { Because } from '../model';

type Words = Pick<Because, 'text' | 'change'>;

const ADDED: Readonly<Record<CoatMaterial['lateWork'], string>> = {
  none: '', abrade: 'abrading added', 'clean and tack coat': 'cleaning and a tack coat added', strip: 'stripping and another coat added',
};

const inWords = (task: Task): string => `“${task.name}”`;

/** Why late work is in the plan, and what would spare it. */
export function lateWords({ document: { series } }: Draft, { closes, laid, longest, material, next, why }: LateWork): Words {
  const when = closes === null ? '' : formatMoment(closes, series.zone);
  const window = `The recoat window of ${material.name}`;
  const added = ADDED[coatMaterialOf(material).lateWork];
  const upTo = longest === null ? '' : ` (${formatLength(longest)} at most)`;
  const session = `Put a session inside the window, in which ${inWords(next)} fits.`;
  switch (why) {
    case 'closed': return { text: `${window} closed ${when}: ${added} before ${inWords(next)}.`, change: null };
    case 'closes': return { text: `${window} closes ${when}, before ${inWords(next)} can begin: ${added}.`, change: session };
    case 'no sessions': return { text: `No two sessions let ${inWords(next)} follow ${inWords(laid)} within the recoat window of ${material.name}${upTo}: ${added}.`, change: session };
    case 'no place': return { text: `Nobody has time for ${inWords(next)} within the recoat window of ${material.name}${closes === null ? upTo : `, which closes ${when}`}: ${added}.`, change: `${session} Or take other work out of it.` };
  }
}

/** What a window that the plan keeps asks of the next coat. */
export function windowWords({ document: { series } }: Draft, { closes, laid, material }: KeptWindow): Words {
  const until = closes === null ? '' : `, which closes ${formatMoment(closes, series.zone)}`;
  return {
    text: `Must begin within the recoat window of ${material.name} after ${inWords(laid)}${until}, or ${material.name} has to be made ready for it again.`,
    change: 'Add a session inside the window, choose a material with a wider one, or put the work of a missed window between the two as a task.',
  };
}
