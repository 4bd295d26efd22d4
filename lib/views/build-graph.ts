/** Work with its order and waits as a drawn graph. */
import { deriveOrder, findCycle, findWork, isDone, listWorks, STAGE_WORDS, workKey, type Link, type Precedence, type SeriesDocument, type Work, type WorkRef } from '@/lib/build';
import { formatLength, formatMoment } from '@/lib/calendar';
import type { PlanBlock } from '@/lib/plan';
import { minutesBetween } from '@/lib/units';
import { layOutLayers, reduceArcs } from './build-layers';
import type { GraphArc, GraphNode, WorkGraph } from './build-model';

const NODE_WIDTH = 186;
const NODE_HEIGHT = 62;
const COLUMN = NODE_WIDTH + 76;
const ROW = NODE_HEIGHT + 18;
const EDGE = 14;

interface DrawnOrder {
  readonly from: string;
  readonly to: string;
  readonly why: string;
  readonly wait: string;
  /** A person set the wait: drawn even where other orders imply it. */
  readonly isSet: boolean;
}

function describeLink(link: Link): string {
  const parts = [
    link.stage === null ? '' : STAGE_WORDS[link.stage],
    link.minWait > 0 ? `${link.clock === 'working' ? 'worked ' : ''}${formatLength(link.minWait)}` : '',
    link.maxWait === null ? '' : `at most ${formatLength(link.maxWait)}`,
  ];
  return parts.filter((part) => part !== '').join(', ');
}

function describeReason(because: Precedence['because'], document: SeriesDocument): { why: string; wait: string } {
  if (because.kind === 'link') {
    const link = document.links.find((one) => one.id === because.linkId);
    const wait = link ? describeLink(link) : '';
    return { why: wait === '' ? 'order set by hand' : `order set by hand: ${wait}`, wait };
  }
  const part = document.parts.find((one) => one.id === because.partId);
  const state = part?.states.find((one) => one.id === because.stateId);
  return { why: `${part?.name ?? 'a removed part'} ${state?.name ?? ''}`.trim(), wait: '' };
}

/** How long the coats of a task keep what follows waiting; empty where nothing dries. */
function describeDrying(ref: WorkRef, document: SeriesDocument, blocks: readonly PlanBlock[]): string {
  const task = ref.kind === 'task' ? document.tasks.find((one) => one.id === ref.id) : undefined;
  if (task === undefined || task.coats.length === 0) return '';
  const cure = blocks.find((block) => block.kind === 'cure' && block.subject.id === task.id);
  return cure ? `dries ${formatLength(minutesBetween(cure.start, cure.end))}` : 'dries';
}

/** Work of one assembly: what touches its parts, and part-less work linked to that. */
function selectWorks(document: SeriesDocument, assembly: string | null): Work[] {
  const works = listWorks(document);
  if (assembly === null) return [...works];
  const partIds = new Set(document.parts.filter((part) => part.assembly === assembly).map((part) => part.id));
  const touching = new Set(works.filter((work) => work.parts.some((use) => partIds.has(use.partId))).map((work) => workKey(work.ref)));
  const isLinked = (work: Work) => work.parts.length === 0 && document.links.some((link) => {
    const [from, to, own] = [workKey(link.from), workKey(link.to), workKey(work.ref)];
    return (from === own && touching.has(to)) || (to === own && touching.has(from));
  });
  return works.filter((work) => touching.has(workKey(work.ref)) || isLinked(work));
}

/** One order for each pair of works, the one with a wait first. */
function collectOrders(document: SeriesDocument, keys: ReadonlySet<string>, blocks: readonly PlanBlock[]): DrawnOrder[] {
  const byPair = new Map<string, DrawnOrder>();
  for (const { from, to, because } of deriveOrder(document)) {
    const [a, b] = [workKey(from), workKey(to)];
    if (!keys.has(a) || !keys.has(b)) continue;
    const pair = `${a}>${b}`;
    const { why, wait } = describeReason(because, document);
    const isSet = because.kind === 'link' && wait !== '';
    const found = { from: a, to: b, why, wait: because.kind === 'link' ? wait : describeDrying(from, document, blocks), isSet };
    const known = byPair.get(pair);
    byPair.set(pair, known ? { ...known, why: `${known.why}; ${found.why}`, wait: isSet ? found.wait : known.wait || found.wait, isSet: isSet || known.isSet } : found);
  }
  return [...byPair.values()];
}

function describeWhen(work: Work, blocks: readonly PlanBlock[], zone: string): string {
  if (isDone(work.record)) return 'done';
  const own = blocks.filter((block) => block.subject.kind === work.ref.kind && block.subject.id === work.ref.id);
  const first = own.find((block) => block.kind === (work.ref.kind === 'task' ? 'task' : 'drop-off')) ?? own.find((block) => block.kind === 'away');
  if (!first) return 'no date yet';
  return `${work.ref.kind === 'task' ? '' : 'out '}${formatMoment(first.start, zone)}`;
}

const sortOf = (work: Work): GraphNode['sort'] => {
  if (work.record.kind === 'outsideJob') return 'away';
  return work.record.category === 'filming' ? 'film' : 'work';
};

const xOf = (level: number): number => EDGE + level * COLUMN;
const yOf = (height: number): number => Math.round(EDGE + height * ROW);

/** A smooth line through the cells of an arc: flat across columns, curved between them. */
function drawPath(way: readonly string[], heightOf: ReadonlyMap<string, number>, level: number): { path: string; x: number; y: number } {
  const middle = (key: string) => yOf(heightOf.get(key) ?? 0) + NODE_HEIGHT / 2;
  const gap = COLUMN - NODE_WIDTH;
  let path = '';
  let label = { x: 0, y: 0 };
  way.slice(1).forEach((key, step) => {
    const [x0, y0, y1] = [xOf(level + step) + NODE_WIDTH, middle(way[step] ?? ''), middle(key)];
    path += step === 0 ? `M${x0} ${y0}` : `H${x0}`;
    path += `C${x0 + gap / 2} ${y0} ${x0 + gap / 2} ${y1} ${x0 + gap} ${y1}`;
    if (step === 0) label = { x: x0 + gap / 2, y: (y0 + y1) / 2 };
  });
  return { path, ...label };
}

/** The graph of one assembly's work, or of all work. */
export function drawGraph(document: SeriesDocument, blocks: readonly PlanBlock[], assembly: string | null): WorkGraph {
  const works = selectWorks(document, assembly);
  const keys = works.map((work) => workKey(work.ref));
  const orders = reduceArcs(collectOrders(document, new Set(keys), blocks), (order) => order.isSet);
  const layers = layOutLayers(keys, orders);
  const titleOf = new Map(works.map((work) => [workKey(work.ref), work.record.name]));
  const nodes = works.map((work): GraphNode => {
    const key = workKey(work.ref);
    const level = layers.levelOf.get(key) ?? 0;
    return {
      key,
      work: { kind: work.ref.kind, id: work.ref.id, name: work.record.name },
      title: work.record.name,
      sort: sortOf(work),
      when: describeWhen(work, blocks, document.series.zone),
      isDone: isDone(work.record),
      isIrreversible: work.record.kind === 'task' && work.record.irreversible,
      level,
      x: xOf(level),
      y: yOf(layers.heightOf.get(key) ?? 0),
      after: orders.filter((order) => order.to === key).map((order) => ({ key: order.from, title: titleOf.get(order.from) ?? '', why: order.why })),
    };
  });
  const arcs = orders.map((order, index): GraphArc => {
    const { path, x, y } = drawPath(layers.ways[index] ?? [], layers.heightOf, layers.levelOf.get(order.from) ?? 0);
    return { key: `${order.from}>${order.to}`, path, label: order.wait, labelX: x, labelY: y, isWait: order.wait !== '' };
  });
  const ring = findCycle(deriveOrder(document)) ?? [];
  const heights = [...layers.heightOf.values()];
  return {
    width: layers.levels === 0 ? 0 : xOf(layers.levels - 1) + NODE_WIDTH + EDGE,
    height: heights.length === 0 ? 0 : yOf(Math.max(...heights)) + NODE_HEIGHT + EDGE,
    node: { width: NODE_WIDTH, height: NODE_HEIGHT },
    nodes: nodes.toSorted((a, b) => a.level - b.level || a.y - b.y),
    arcs,
    ring: ring.map((arc) => findWork(document, arc.from)?.name ?? 'removed work'),
  };
}
