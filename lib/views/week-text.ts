/** The week in a terminal: the same facts as the page, plain text, 100 columns at most. */
import { isWorkshopWork } from '@/lib/plan';
import type { BlockView, SessionCard, WeekView } from './week-model';

const WIDTH = 100;

/** Breaks a line at spaces; the lines after the first are indented. */
function wrapText(text: string, indent: string, width = WIDTH): string[] {
  const lines: string[] = [];
  let line = indent;
  for (const word of text.split(' ')) {
    if (line.trim() !== '' && line.length + 1 + word.length > width) {
      lines.push(line);
      line = `${indent}  ${word}`;
    } else {
      line = line.trim() === '' ? `${line}${word}` : `${line} ${word}`;
    }
  }
  return [...lines, line];
}

function blockLines(block: BlockView, time: string): string[] {
  const signs = [block.isFilmed ? 'filmed' : '', block.isIrreversible ? 'cannot be redone' : '', block.isPinned ? 'pinned' : ''].filter(Boolean);
  const who = block.crew.length > 0 ? ` · ${block.crew.join(', ')}` : '';
  const where = block.place === null ? '' : ` · ${block.place}`;
  const head = `${time}  ${block.title} (${block.length})${where}${who}${signs.length > 0 ? ` · ${signs.join(', ')}` : ''}`;
  const why = block.because[0];
  return [...wrapText(head, '  '), ...(why ? wrapText(`why here: ${why.text}`, '      ') : [])];
}

function sessionLines(view: WeekView, card: SessionCard): string[] {
  const kind = card.isRecording ? 'recording' : 'no camera';
  const work = card.work.flatMap(({ blockId, time }) => {
    const block = view.blocks[blockId];
    return block ? blockLines(block, time) : [];
  });
  const ready = card.ready.flatMap((item) => wrapText(`[ ] ${item.text}${item.isAtRisk ? ' (not certain yet)' : ''}`, '  '));
  return [
    `${card.when} · ${card.name} · ${kind} · ${card.crew.join(', ') || 'nobody'}`,
    `  ${card.booking}`,
    ...(work.length > 0 ? work : ['  Nothing is planned in this session.']),
    ...(ready.length > 0 ? ['  Must be ready:', ...ready] : []),
    '',
  ];
}

function waitLines(view: WeekView): string[] {
  const waits = Object.values(view.blocks).filter((block) => !isWorkshopWork(block.kind));
  if (waits.length === 0) return [];
  return ['On the road, away, drying and shut', ...waits.toSorted((a, b) => a.start - b.start).flatMap((block) => wrapText(`${block.kindWord}: ${block.title}, ${block.when}`, '  ')), ''];
}

function listLines(title: string, items: readonly string[]): string[] {
  return items.length === 0 ? [] : [title, ...items.flatMap((item) => wrapText(item, '  ')), ''];
}

/** The week as text, a trailing newline included. */
export function writeWeek(view: WeekView): string {
  const plan = view.plan ? `plan ${view.plan.number}, made ${view.plan.madeAt}` : 'no plan has been accepted yet: open the Plans page and re-plan';
  const deadlines = view.days.flatMap((day) => day.deadlines).map((deadline) => `${deadline.text}: ${deadline.outlook}`);
  const lines = [
    `${view.seriesName} · ${view.week} · ${view.label}`,
    ...wrapText(`${plan}${view.plan?.staleness ? `. ${view.plan.staleness}` : ''} · times in ${view.zone}`, ''),
    '',
    ...(view.sessions.length > 0 ? view.sessions.flatMap((card) => sessionLines(view, card)) : ['No session this week.', '']),
    ...waitLines(view),
    ...listLines('Due this week', deadlines),
    ...listLines('No place in the plan', view.unplaced.map((work) => `${work.title}: ${work.reasons[0]?.text ?? 'no reason known'}`)),
    ...listLines('If the week falls through', view.fallback.map((item) => `${item.title} (${item.length})${item.place ? ` · ${item.place}` : ''}`)),
    "The maker's instructions, local codes and licensed practice come first.",
  ];
  return `${lines.join('\n')}\n`;
}
