/** Why a time lag holds something back, in words, and the smallest change that would free it. */
import type { Material } from '@/lib/build';
import { formatLength, formatMoment } from '@/lib/calendar';
import { stageWait } from '@/lib/cure';
import { addMinutes, celsius, type Instant } from '@/lib/units';
import { need, type Draft, type LagReason } from '../compile/draft';
import { activityTitle } from './titles';

/** A reason without its moment. */
export interface Words {
  readonly text: string;
  readonly change: string | null;
}

/** Kelvins of heating that a change proposes. */
const WARMER = 10;

const STAGE_WORDS = { recoatFrom: 'ready to recoat', handle: 'hard enough to handle', touchDry: 'touch dry', fullCure: 'fully cured' } as const;

function coatWords(draft: Draft, reason: Extract<LagReason, { kind: 'coat' }>, until: Instant): Words {
  const { zone, workshopTemperature } = draft.document.series;
  const material: Material = need(draft.materials, reason.materialId, 'material');
  const task = need(draft.tasks, reason.taskId, 'task');
  const wait = stageWait(material, reason.stage, workshopTemperature);
  const assumed = reason.isHeatOwed
    ? `counted at its minimum of ${material.minimumTemperature} °C, so somebody must keep it that warm`
    : `at ${workshopTemperature} °C`;
  const text = `Waits for ${material.name} of “${task.name}”: ${STAGE_WORDS[reason.stage]} ${formatMoment(until, zone)}, ${formatLength(wait)} after application ${assumed}.`;
  const warm = celsius(Math.max(workshopTemperature, material.minimumTemperature) + WARMER);
  const saved = wait - stageWait(material, reason.stage, warm);
  const change = saved < 30 ? null : `Kept at ${warm} °C it is ${STAGE_WORDS[reason.stage]} ${formatMoment(addMinutes(until, -saved), zone)}, ${formatLength(saved)} earlier (rule of thumb; the data sheet comes first).`;
  return { text, change };
}

function stateWords(draft: Draft, reason: Extract<LagReason, { kind: 'part-state' }>, from: string): Words {
  const part = need(draft.parts, reason.partId, 'part');
  const state = part.states.find((candidate) => candidate.id === reason.stateId)?.name ?? reason.stateId;
  return { text: `Follows “${activityTitle(draft, from)}”: ${part.name} is “${state}” there.`, change: null };
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
      const text = `Away at ${trade.name}: ${reason.days} working days after drop-off, back from ${formatMoment(until, draft.document.series.zone)}.`;
      return { text, change: `Ask ${trade.name} for ${Math.max(1, reason.days - 1)} working days, or drop off a day earlier.` };
    }
    case 'before-shot':
      return { text: 'Cannot be undone, so its before-shots come first.', change: null };
    case 'episode':
      return { text: `Follows “${activityTitle(draft, from)}”.`, change: null };
    default:
      return reason satisfies never;
  }
}
