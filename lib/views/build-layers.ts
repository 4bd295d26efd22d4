/**
 * Layered drawing of a directed graph: columns by the longest way from a start, few crossings by barycentres,
 * heights by least squares with a fixed gap. Knows only keys and numbers.
 */

export interface LayerArc {
  readonly from: string;
  readonly to: string;
}

/** A node, or the place where a long arc crosses a column. */
interface Cell {
  readonly key: string;
  readonly isNode: boolean;
}

export interface Layers {
  readonly levelOf: ReadonlyMap<string, number>;
  /** Row height units from the top, by cell. */
  readonly heightOf: ReadonlyMap<string, number>;
  readonly levels: number;
  /** Cells an arc runs through, ends included, in the order of the arcs given. */
  readonly ways: readonly (readonly string[])[];
}

const SWEEPS = 12;
/** A crossing needs less room than a node. */
const CROSSING_GAP = 0.55;

/** Longest way from a start, counted in arcs. Arcs that close a ring are left out by the caller. */
function levelNodes(keys: readonly string[], arcs: readonly LayerArc[]): Map<string, number> {
  const level = new Map(keys.map((key) => [key, 0]));
  const waits = new Map(keys.map((key) => [key, arcs.filter((arc) => arc.to === key).length]));
  const free = keys.filter((key) => waits.get(key) === 0);
  for (let key = free.shift(); key !== undefined; key = free.shift()) {
    for (const arc of arcs.filter((one) => one.from === key)) {
      level.set(arc.to, Math.max(level.get(arc.to) ?? 0, (level.get(key) ?? 0) + 1));
      const left = (waits.get(arc.to) ?? 0) - 1;
      waits.set(arc.to, left);
      if (left === 0) free.push(arc.to);
    }
  }
  // A start moves up to the first thing that needs it.
  for (const key of keys) {
    const next = arcs.filter((arc) => arc.from === key).map((arc) => level.get(arc.to) ?? 0);
    if (next.length > 0 && !arcs.some((arc) => arc.to === key)) level.set(key, Math.max(0, Math.min(...next) - 1));
  }
  return level;
}

/** Arcs without those that another way already implies, and without those that close a ring. */
export function reduceArcs<T extends LayerArc>(arcs: readonly T[], isKept: (arc: T) => boolean): T[] {
  const next = new Map<string, Set<string>>();
  const reaches = (from: string, to: string, skip: T | null): boolean => {
    const seen = new Set<string>();
    const stack = [...(next.get(from) ?? [])].filter((key) => skip === null || key !== skip.to);
    for (let key = stack.pop(); key !== undefined; key = stack.pop()) {
      if (key === to) return true;
      if (seen.has(key)) continue;
      seen.add(key);
      stack.push(...(next.get(key) ?? []));
    }
    return false;
  };
  const open = arcs.filter((arc) => {
    if (arc.from === arc.to || reaches(arc.to, arc.from, null) || next.get(arc.to)?.has(arc.from)) return false;
    next.set(arc.from, (next.get(arc.from) ?? new Set()).add(arc.to));
    return true;
  });
  return open.filter((arc) => isKept(arc) || !reaches(arc.from, arc.to, arc));
}

/** Heights that keep the order and the gaps and move as little as possible from the wished ones (pool adjacent violators). */
export function spreadHeights(wished: readonly number[], gaps: readonly number[]): number[] {
  const offsets: number[] = [];
  for (let index = 0; index < wished.length; index += 1) offsets.push(index === 0 ? 0 : (offsets[index - 1] ?? 0) + (gaps[index] ?? 1));
  const pools: { sum: number; count: number }[] = [];
  wished.forEach((wish, index) => {
    let pool = { sum: wish - (offsets[index] ?? 0), count: 1 };
    for (let last = pools.at(-1); last && last.sum / last.count > pool.sum / pool.count; last = pools.at(-1)) {
      pools.pop();
      pool = { sum: pool.sum + last.sum, count: pool.count + last.count };
    }
    pools.push(pool);
  });
  const flat = pools.flatMap(({ sum, count }) => Array.from({ length: count }, () => sum / count));
  return flat.map((height, index) => height + (offsets[index] ?? 0));
}

const mean = (values: readonly number[]): number | null =>
  values.length === 0 ? null : values.reduce((sum, value) => sum + value, 0) / values.length;

interface Grid {
  readonly columns: Cell[][];
  readonly ways: string[][];
  readonly before: Map<string, string[]>;
  readonly after: Map<string, string[]>;
}

function buildGrid(keys: readonly string[], arcs: readonly LayerArc[], levelOf: ReadonlyMap<string, number>): Grid {
  const levels = Math.max(-1, ...levelOf.values()) + 1;
  const columns: Cell[][] = Array.from({ length: levels }, () => []);
  for (const key of keys) columns[levelOf.get(key) ?? 0]?.push({ key, isNode: true });
  const [before, after] = [new Map<string, string[]>(), new Map<string, string[]>()];
  const ways = arcs.map((arc, index) => {
    const way = [arc.from];
    for (let level = (levelOf.get(arc.from) ?? 0) + 1; level < (levelOf.get(arc.to) ?? 0); level += 1) {
      const key = `#${index}@${level}`;
      columns[level]?.push({ key, isNode: false });
      way.push(key);
    }
    way.push(arc.to);
    way.slice(1).forEach((key, step) => {
      const previous = way[step] ?? '';
      before.set(key, [...(before.get(key) ?? []), previous]);
      after.set(previous, [...(after.get(previous) ?? []), key]);
    });
    return way;
  });
  return { columns, ways, before, after };
}

/** Orders each column by the mean place of its neighbours, forwards and backwards in turn. */
function orderColumns(grid: Grid): void {
  const placeOf = new Map<string, number>();
  const note = (column: readonly Cell[]) => column.forEach((cell, place) => placeOf.set(cell.key, place));
  grid.columns.forEach(note);
  for (let sweep = 0; sweep < SWEEPS; sweep += 1) {
    const isForward = sweep % 2 === 0;
    const neighbours = isForward ? grid.before : grid.after;
    for (const column of isForward ? grid.columns : grid.columns.toReversed()) {
      const wish = new Map(column.map((cell, place) => [cell.key, mean((neighbours.get(cell.key) ?? []).map((key) => placeOf.get(key) ?? 0)) ?? place]));
      column.sort((a, b) => (wish.get(a.key) ?? 0) - (wish.get(b.key) ?? 0));
      note(column);
    }
  }
}

function gapsOf(column: readonly Cell[]): number[] {
  return column.map((cell, index) => (cell.isNode && column[index - 1]?.isNode !== false ? 1 : cell.isNode || column[index - 1]?.isNode ? 0.8 : CROSSING_GAP));
}

function placeHeights(grid: Grid): Map<string, number> {
  const heightOf = new Map<string, number>();
  for (const column of grid.columns) spreadHeights(column.map(() => 0), gapsOf(column)).forEach((height, index) => heightOf.set(column[index]?.key ?? '', height));
  for (let sweep = 0; sweep < SWEEPS; sweep += 1) {
    for (const column of sweep % 2 === 0 ? grid.columns : grid.columns.toReversed()) {
      const wished = column.map((cell) => {
        const near = [...(grid.before.get(cell.key) ?? []), ...(grid.after.get(cell.key) ?? [])];
        return mean(near.map((key) => heightOf.get(key) ?? 0)) ?? heightOf.get(cell.key) ?? 0;
      });
      spreadHeights(wished, gapsOf(column)).forEach((height, index) => heightOf.set(column[index]?.key ?? '', height));
    }
  }
  const top = Math.min(0, ...heightOf.values());
  for (const [key, height] of heightOf) heightOf.set(key, height - top);
  return heightOf;
}

/** Columns and heights of a graph without rings. The same input gives the same drawing. */
export function layOutLayers(keys: readonly string[], arcs: readonly LayerArc[]): Layers {
  const levelOf = levelNodes(keys, arcs);
  const grid = buildGrid(keys, arcs, levelOf);
  orderColumns(grid);
  return { levelOf, heightOf: placeHeights(grid), levels: grid.columns.length, ways: grid.ways };
}
