/** Parts as threads of states. */
import { isDone, listWorks, type Part, type SeriesDocument, type Work } from '@/lib/build';
import { dateOf, formatDay, formatMoment } from '@/lib/calendar';
import type { PlanBlock } from '@/lib/plan';
import type { Instant } from '@/lib/units';
import type { Assembly, Bead, PartThread } from './build-model';
import { nameOf } from './week-block';

const ofWork = (blocks: readonly PlanBlock[], work: Work) =>
  blocks.filter((block) => block.subject.kind === work.ref.kind && block.subject.id === work.ref.id);

/** When the plan has the state reached: the end of the task, or of the collection. Null without a date. */
function findReached(work: Work, blocks: readonly PlanBlock[]): Instant | null {
  const wanted = work.ref.kind === 'task' ? 'task' : 'collection';
  return ofWork(blocks, work).find((block) => block.kind === wanted)?.end ?? null;
}

function describeWait(work: Work, part: Part, blocks: readonly PlanBlock[], document: SeriesDocument): string | null {
  const { record } = work;
  if (record.kind === 'outsideJob') {
    const trade = nameOf(record.tradeId, document.trades, 'trade');
    return `${record.quote.likely} working days at ${trade}`;
  }
  const drying = ofWork(blocks, work).filter((block) => block.kind === 'cure' && block.partIds.includes(part.id));
  const last = drying.toSorted((a, b) => a.end - b.end).at(-1);
  if (last) return `dries until ${formatMoment(last.end, document.series.zone)}`;
  return record.coats.length > 0 ? 'dries afterwards' : null;
}

/** The wait before a state: the way from the bead before it. */
function wayOf(maker: Work | undefined): Bead['way'] {
  if (!maker) return 'start';
  if (maker.record.kind === 'outsideJob') return 'away';
  return maker.record.coats.length > 0 ? 'drying' : 'work';
}

function threadPart(part: Part, works: readonly Work[], blocks: readonly PlanBlock[], document: SeriesDocument): PartThread {
  const { zone } = document.series;
  const makers = part.states.map((state) => works.find((work) => work.parts.some((use) => use.partId === part.id && use.to === state.id)));
  const current = Math.max(0, makers.findLastIndex((maker) => maker !== undefined && isDone(maker.record)));
  const beads = part.states.map((state, index): Bead => {
    const maker = makers[index];
    const reached = maker ? findReached(maker, blocks) : null;
    const done = maker?.record.kind === 'task' ? maker.record.doneAt : (maker?.record.collectedAt ?? null);
    const at = done ?? reached;
    return {
      stateId: state.id,
      name: state.name,
      status: index < current ? 'reached' : index === current ? 'current' : reached === null ? 'open' : 'planned',
      when: at === null ? null : formatDay(dateOf(at, zone)),
      by: maker ? { kind: maker.ref.kind, id: maker.ref.id, name: maker.record.name } : null,
      way: index === 0 ? 'start' : wayOf(maker),
      wait: maker ? describeWait(maker, part, blocks, document) : null,
    };
  });
  return { part: { kind: 'part', id: part.id, name: part.name }, ...describeWhereabouts(part, document), beads };
}

function describeWhereabouts(part: Part, document: SeriesDocument): { whereabouts: string; isAway: boolean } {
  const { kind, id } = part.whereabouts;
  const list = kind === 'place' ? document.places : kind === 'trade' ? document.trades : [];
  const name = list.find((one) => one.id === id)?.name;
  if (kind === 'store' || name === undefined) return { whereabouts: 'in store', isAway: false };
  return { whereabouts: kind === 'trade' ? `away at ${name}` : `in ${name}`, isAway: kind === 'trade' };
}

/** Parts by assembly, in the order their first part has in the document. */
export function listAssemblies(document: SeriesDocument, blocks: readonly PlanBlock[]): Assembly[] {
  const works = listWorks(document);
  const names = [...new Set(document.parts.map((part) => part.assembly))];
  return names.map((name) => {
    const parts = document.parts.filter((part) => part.assembly === name).map((part) => threadPart(part, works, blocks, document));
    const reached = parts.reduce((sum, thread) => sum + thread.beads.findIndex((bead) => bead.status === 'current'), 0);
    return { name, parts, reached, total: parts.reduce((sum, thread) => sum + thread.beads.length - 1, 0) };
  });
}
