/** Why a time lag holds something back, in words, and the smallest change that would free it. */
import type { Trade } from '@/lib/build';
import { addDays, dateOf, eachDate, formatLength, formatMoment, weekdayOf } from '@/lib/calendar';
import { openingHours, workingDays, type LearnedRatio } from '@/lib/outwork';
import { addMinutes, type Instant } from '@/lib/units';
import { cureOf, need, type Draft, type LagReason } from '../compile/draft';
import { heatCaution } from './heater-words';
import { activityTitle } from './titles';

/** A reason without its moment. */
export interface Words {
  readonly text: string;
  readonly change: string | null;
}

/** Days looked back for the drop-off of a job that returns. */
const LONGEST_LOOK = 120;

export const STAGE_WORDS = { recoatFrom: 'ready to recoat', handle: 'hard enough to handle', touchDry: 'touch dry', fullCure: 'fully cured' } as const;

function coatWords(draft: Draft, reason: Extract<LagReason, { kind: 'coat' }>, until: Instant): Words {
  const { zone } = draft.document.series;
  const material = need(draft.materials, reason.materialId, 'material');
  const task = need(draft.tasks, reason.taskId, 'task');
  const { length, conditions, warm } = cureOf(draft, task).tell(material, reason.stage, until);
  const text = `Waits for ${material.name} of “${task.name}”: ${STAGE_WORDS[reason.stage]} ${formatMoment(until, zone)}, ${formatLength(length)} after application ${conditions}.`;
  const saved = length - warm.length;
  const caution = heatCaution(draft, need(draft.places, task.placeId, 'place').airZone, material);
  const change = saved < 30 ? null : `Kept at ${warm.at} °C${caution} it is ${STAGE_WORDS[reason.stage]} ${formatMoment(addMinutes(until, -saved), zone)}, ${formatLength(saved)} earlier (rule of thumb; the data sheet comes first).`;
  return { text, change };
}

function stateWords(draft: Draft, reason: Extract<LagReason, { kind: 'part-state' }>, from: string): Words {
  const part = need(draft.parts, reason.partId, 'part');
  const state = part.states.find((candidate) => candidate.id === reason.stateId)?.name ?? reason.stateId;
  return { text: `Follows “${activityTitle(draft, from)}”: ${part.name} is “${state}” there.`, change: null };
}

/** ` (its quote by 1.2, from 4 of its jobs and 9 in all)`. */
function learnedWords(learned: LearnedRatio | null): string {
  if (learned === null || learned.counts.all === 0) return '';
  const { counts, factor } = learned;
  return ` (its quote by ${(Math.round(factor * 100) / 100).toString()}, from ${counts.trade} of its own past jobs and ${counts.all} in all)`;
}

/** ` (closed for Good Friday and Easter Monday)`: the trade's closed days of its working week between drop-off and return. */
function closedWords(draft: Draft, trade: Trade, days: number, until: Instant): string {
  const { zone } = draft.document.series;
  const back = dateOf(until, zone);
  const open = workingDays(openingHours(trade, addDays(back, -LONGEST_LOOK), addDays(back, -1), zone), zone);
  const out = open.at(-Math.max(1, Math.ceil(days)))?.date ?? back;
  const weekdays = new Set(trade.openHours.map(({ weekday }) => weekday));
  const names = trade.closed.filter(({ from, to }) => from < back && to > out && eachDate(from, to).some((date) => weekdays.has(weekdayOf(date)))).map(({ why }) => why).filter((why) => why !== '');
  return names.length === 0 ? '' : ` (closed for ${[...new Set(names)].join(', ')})`;
}

/** Words for a lag that binds until a moment. `from` is the activity it starts at. */
export function lagWords(draft: Draft, reason: LagReason, from: string, until: Instant): Words {
  switch (reason.kind) {
    case 'coat':
      return coatWords(draft, reason, until);
    case 'part-state':
      return stateWords(draft, reason, from);
    case 'link': {
      const link = draft.document.links.find((candidate) => candidate.id === reason.linkId);
      const wait = link && link.minWait > 0 ? `, at least ${formatLength(link.minWait)} after it` : '';
      return { text: `Follows “${activityTitle(draft, from)}”${wait}, as the link “${link?.name ?? reason.linkId}” asks.`, change: `Shorten or remove the link “${link?.name ?? reason.linkId}”, if the work allows it.` };
    }
    case 'away': {
      const job = need(draft.jobs, reason.jobId, 'outside job');
      const trade = need(draft.trades, job.tradeId, 'outside trade');
      const text = `Away at ${trade.name}: ${reason.days} working days after drop-off${learnedWords(reason.learned)}, back from ${formatMoment(until, draft.document.series.zone)}${closedWords(draft, trade, reason.days, until)}.`;
      return { text, change: `Ask ${trade.name} for ${Math.max(1, reason.days - 1)} working days, or drop off a day earlier.` };
    }
    case 'before-shot':
      if (reason.partId === null) return { text: 'Cannot be undone, so its before-shots come first.', change: null };
      return { text: `“${activityTitle(draft, from)}” shows ${need(draft.parts, reason.partId, 'part').name} as it is until then.`, change: 'Film those shots earlier, or take the part out of them.' };
    case 'shut': {
      const task = need(draft.tasks, reason.taskId, 'task');
      const { airZone } = need(draft.places, task.placeId, 'place');
      return { text: `Nobody may breathe the air of ${airZone} until ${formatMoment(until, draft.document.series.zone)}: isocyanate from “${task.name}” has to clear.`, change: null };
    }
    case 'late-work':
    case 'episode':
      return { text: `Follows “${activityTitle(draft, from)}”.`, change: null };
    default:
      return reason satisfies never;
  }
}
