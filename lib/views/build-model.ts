/** What the build page shows: plain, serialisable data. */
import type { RecordLink } from './week-model';

/** One state of a part. */
export interface Bead {
  readonly stateId: string;
  readonly name: string;
  /** `reached`: was in it. `current`: is in it. `planned`: has a date. `open`: no date yet. */
  readonly status: 'reached' | 'current' | 'planned' | 'open';
  /** `Sat 5 Dec`, null: no date. */
  readonly when: string | null;
  /** Work that makes it, null: the part comes in it, or nothing makes it. */
  readonly by: RecordLink | null;
  /** How the part gets here from the bead before. */
  readonly way: 'start' | 'work' | 'away' | 'drying';
  /** `9 working days at the plater`, `dries until Sun 6 Dec 10:00`. */
  readonly wait: string | null;
}

export interface PartThread {
  readonly part: RecordLink;
  /** `in the paint corner`, `at the galvanizer`, `in store`. */
  readonly whereabouts: string;
  readonly isAway: boolean;
  readonly beads: readonly Bead[];
}

export interface Assembly {
  readonly name: string;
  readonly parts: readonly PartThread[];
  /** Reached states after the first, and all of them. */
  readonly reached: number;
  readonly total: number;
}

export interface GraphNode {
  readonly key: string;
  readonly work: RecordLink;
  readonly title: string;
  readonly sort: 'work' | 'film' | 'away';
  /** `Sat 5 Dec 10:00`, `done`, `no date yet`. */
  readonly when: string;
  readonly isDone: boolean;
  readonly isIrreversible: boolean;
  readonly level: number;
  /** Upper left corner and size, in px. */
  readonly x: number;
  readonly y: number;
  /** Keys of what comes straight before it. */
  readonly after: readonly { readonly key: string; readonly title: string; readonly why: string }[];
}

export interface GraphArc {
  readonly key: string;
  /** SVG path data. */
  readonly path: string;
  /** Wait between the two: `dry to recoat`, `at least 2 d`; empty: none. */
  readonly label: string;
  readonly labelX: number;
  readonly labelY: number;
  readonly isWait: boolean;
}

export interface WorkGraph {
  /** Size of the drawing and of each node in it, px. */
  readonly width: number;
  readonly height: number;
  readonly node: { readonly width: number; readonly height: number };
  readonly nodes: readonly GraphNode[];
  readonly arcs: readonly GraphArc[];
  /** Names of work in a ring, where the order contradicts itself. */
  readonly ring: readonly string[];
}

export interface BuildView {
  readonly seriesId: string;
  readonly seriesName: string;
  readonly currentWeek: string;
  readonly assemblies: readonly Assembly[];
  /** Assembly drawn as a graph, null: all of them. */
  readonly chosen: string | null;
  readonly graph: WorkGraph;
  readonly hasPlan: boolean;
  readonly staleness: string | null;
  readonly planNumber: number | null;
}
