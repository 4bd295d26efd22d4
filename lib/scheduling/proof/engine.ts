import { Analysis } from './analysis';
import { Atoms } from './atoms';
import { ClauseBase } from './clauses';
import { followEdge } from './network';
import type { Network } from './network';
import { Timetable } from './timetable';
import { BY_CLAUSE, BY_DECISION, BY_EDGE, BY_STORED, Trail } from './trail';

export type Outcome = 'solution' | 'refuted' | 'limit';

/** How the next decision is made: by the literals most active in conflicts, or the earliest open start first. */
export type Branching = 'activity' | 'earliest' | 'alternate';

const NO_LITERAL = new Int32Array(0);

/**
 * Conflict-learning search over one network. What it learns holds for the network and its root bounds alone, so it
 * serves any later search under other assumptions.
 */
export class Engine {
  readonly trail: Trail;
  readonly clauses: ClauseBase;
  readonly atoms: Atoms;
  /** Starts (and orders) to try first when a literal is decided; -1 for none. */
  readonly wish: Int32Array;
  /** Lets a start wait in the order of `earliest`, as if it were later by so much. */
  readonly delay: Int32Array;
  conflicts = 0;
  /** Entries propagated, as a measure of work. */
  work = 0;
  /** True once the root has no solution. */
  isRefuted = false;
  private readonly analysis: Analysis;
  private readonly tables: Timetable[] = [];
  private readonly tablesOf: Timetable[][];
  private readonly duration: Int32Array;
  private head = 0;
  private restarts = 0;
  private clauseLimit = 4000;
  private readonly pairs = new Int32Array(4);

  /** `looksAtWindows`: also propagate by energy, which pays where bounds are proven and not where they are only used. `cliques`: see `listCliques`. */
  constructor(readonly network: Network, private readonly looksAtWindows: boolean, cliques: readonly (readonly number[])[] = []) {
    const { instance, activities } = network;
    this.trail = new Trail(network.least, network.greatest);
    this.clauses = new ClauseBase(this.trail);
    this.atoms = new Atoms(this.trail);
    this.analysis = new Analysis(network, this.trail, this.clauses, this.atoms);
    this.duration = Int32Array.from(instance.durations);
    this.wish = new Int32Array(network.variables).fill(-1);
    this.delay = new Int32Array(network.variables);
    this.tablesOf = Array.from({ length: activities }, () => []);
    instance.capacities.forEach((capacity, k) => this.addTable(capacity, Int32Array.from(instance.demands, (row) => row[k]!)));
    for (const members of cliques) {
      const demand = new Int32Array(activities);
      for (const i of members) demand[i] = 1;
      this.addTable(1, demand);
    }
    for (let x = 0; x < network.variables; x++) if (network.least[x]! > network.greatest[x]!) this.isRefuted = true;
  }

  private addTable(capacity: number, demand: Int32Array): void {
    const table = new Timetable(this.trail, capacity, this.duration, demand);
    if (table.tasks.length === 0) return;
    this.tables.push(table);
    for (const i of table.tasks) this.tablesOf[i]!.push(table);
  }

  /** Raises a bound for good. False when that leaves no solution. */
  restrict(b: number, v: number): boolean {
    this.retreat(0);
    if (!this.isRefuted && !this.trail.post(b, v, BY_DECISION, 0)) this.isRefuted = true;
    return !this.isRefuted && this.settleRoot();
  }

  /** Propagates the root. False when there is no solution. */
  settleRoot(): boolean {
    this.retreat(0);
    if (!this.isRefuted && !this.propagate()) this.isRefuted = true;
    if (!this.isRefuted) {
      this.trail.forgetRoot();
      this.head = this.trail.size;
    }
    return !this.isRefuted;
  }

  /** A bound as it stands now. */
  least(x: number): number {
    return this.trail.value[2 * x]!;
  }

  greatest(x: number): number {
    return -this.trail.value[2 * x + 1]!;
  }

  /**
   * Searches under assumptions (pairs bound, value) for at most `limit` conflicts. After `solution` the starts can be
   * read with `least`; `refuted` means that no solution meets the assumptions.
   */
  search(limit: number, branching: Branching, assumptions: Int32Array = NO_LITERAL, isStopped: () => boolean = () => false): Outcome {
    if (!this.settleRoot()) return 'refuted';
    const last = this.conflicts + limit;
    let untilRestart = this.conflicts + this.nextRun();
    let isByActivity = this.isActivityRun(branching);
    for (;;) {
      if (!this.propagate()) {
        this.conflicts++;
        if (!this.resolve()) return 'refuted';
        if (this.conflicts >= last || (this.conflicts % 64 === 0 && isStopped())) return 'limit';
        continue;
      }
      if (this.conflicts >= untilRestart) {
        this.restart();
        if (this.isRefuted) return 'refuted';
        untilRestart = this.conflicts + this.nextRun();
        isByActivity = this.isActivityRun(branching);
        continue;
      }
      const depth = this.trail.depth;
      if (2 * depth < assumptions.length) {
        const b = assumptions[2 * depth]!;
        const v = assumptions[2 * depth + 1]!;
        this.trail.openLevel();
        if (!this.trail.post(b, v, BY_DECISION, 0)) return 'refuted';
        continue;
      }
      if (!this.decide(isByActivity)) return 'solution';
    }
  }

  private nextRun(): number {
    this.restarts++;
    return 50 * luby(this.restarts);
  }

  private isActivityRun(branching: Branching): boolean {
    return branching === 'activity' || (branching === 'alternate' && this.restarts % 2 === 0);
  }

  /** Learns from the failed step. False when nothing is left to try. */
  private resolve(): boolean {
    const { analysis, trail } = this;
    if (trail.depth === 0 || !analysis.learn()) {
      this.isRefuted = true;
      return false;
    }
    this.retreat(analysis.backTo);
    const learnt = analysis.learnt;
    let isPosted: boolean;
    if (analysis.literals === 1) isPosted = trail.post(learnt[0]!, learnt[1]!, BY_DECISION, 0);
    else isPosted = trail.post(learnt[0]!, learnt[1]!, BY_CLAUSE, this.clauses.add(learnt, analysis.literals, analysis.spread));
    this.atoms.decay();
    this.clauses.decay();
    if (!isPosted) this.isRefuted = true;
    return isPosted;
  }

  private restart(): void {
    this.retreat(0);
    if (this.clauses.count > this.clauseLimit) {
      if (!this.settleRoot()) return;
      this.clauses.reduce(this.clauseLimit >> 1);
      this.clauseLimit += 300;
    }
  }

  private retreat(depth: number): void {
    const top = this.trail.depth;
    if (depth >= top) return;
    this.trail.backTo(depth);
    this.atoms.reopen(depth, top);
    for (const table of this.tables) table.retreat();
    this.head = this.trail.size;
  }

  /** Opens a level with a decision. False when every start is decided. */
  private decide(isByActivity: boolean): boolean {
    const trail = this.trail;
    const a = isByActivity ? this.atoms.next() : -1;
    if (a >= 0) {
      const x = this.atoms.variable[a]!;
      const t = this.atoms.threshold[a]!;
      trail.openLevel();
      if (this.wish[x]! >= t) trail.post(2 * x, t, BY_DECISION, 0);
      else trail.post(2 * x + 1, 1 - t, BY_DECISION, 0);
      return true;
    }
    const x = this.earliestOpen();
    if (x < 0) return false;
    trail.openLevel();
    trail.post(2 * x + 1, -trail.value[2 * x]!, BY_DECISION, 0);
    return true;
  }

  /** The activity (or makespan) that can start earliest among those not fixed; ties to the least latest start. */
  private earliestOpen(): number {
    const value = this.trail.value;
    let best = -1;
    let bestKey = 0;
    let bestGreatest = 0;
    for (let x = 0; x <= this.network.makespan; x++) {
      const least = value[2 * x]!;
      const greatest = -value[2 * x + 1]!;
      if (least === greatest) continue;
      const key = least + this.delay[x]!;
      if (best >= 0 && (key > bestKey || (key === bestKey && greatest >= bestGreatest))) continue;
      best = x;
      bestKey = key;
      bestGreatest = greatest;
    }
    return best;
  }

  /** Propagates all that rose. False on a conflict. */
  propagate(): boolean {
    const trail = this.trail;
    for (;;) {
      while (this.head < trail.size) {
        const e = this.head++;
        this.work++;
        const b = trail.bound[e]!;
        const before = e < trail.value.length ? trail.reached[e]! - 1 : trail.reached[trail.older[e]!]!;
        if (trail.last[b] === e) this.touchTables(b);
        if (!this.followEdges(b) || !this.clauses.propagate(b, before, trail.reached[e]!)) return false;
      }
      const size = trail.size;
      for (const table of this.tables) {
        if (table.isIdle()) continue;
        if (!table.propagate()) return false;
        if (trail.size > size) break;
      }
      if (trail.size > size) continue;
      if (!this.looksAtWindows) return true;
      for (const table of this.tables) {
        if (!table.checkEnergy()) return false;
        if (trail.size > size) break;
      }
      if (trail.size === size) return true;
    }
  }

  private touchTables(b: number): void {
    const i = b >> 1;
    if (i >= this.network.activities) return;
    const value = this.trail.value;
    const hasPart = -value[2 * i + 1]! < value[2 * i]! + this.duration[i]!;
    for (const table of this.tablesOf[i]!) table.touch(i, hasPart);
  }

  private followEdges(b: number): boolean {
    const { network, trail } = this;
    const { head, leaving, edgeTo, edgeIf, edgeCurve, edgeLag, orderEdges } = network;
    const value = trail.value;
    for (let k = head[b]!, end = head[b + 1]!; k < end; k++) {
      const edge = leaving[k]!;
      const to = edgeTo[edge]!;
      const v = edgeCurve[edge]! < 0 ? value[b]! + edgeLag[edge]! : followEdge(network, edge, value[b]!);
      if (v <= value[to]!) continue;
      const condition = edgeIf[edge]!;
      if (condition >= 0) {
        const needed = condition & 1 ? 0 : 1;
        if (value[condition]! < needed) {
          if (value[condition ^ 1]! < 1 - needed && v + value[to ^ 1]! > 0 && !this.denyOrder(edge, condition, needed)) return false;
          continue;
        }
      }
      if (!trail.post(to, v, BY_EDGE, edge)) return false;
    }
    if (b < 2 * network.orders) return true;
    const first = orderEdges + 4 * ((b >> 1) - network.orders) + (b & 1 ? 2 : 0);
    if (value[b]! < (b & 1 ? 0 : 1)) return true;
    for (let edge = first; edge < first + 2; edge++) {
      if (!trail.post(edgeTo[edge]!, value[network.edgeFrom[edge]!]! + edgeLag[edge]!, BY_EDGE, edge)) return false;
    }
    return true;
  }

  /** The edge would push its target too far: its condition cannot hold. */
  private denyOrder(edge: number, condition: number, needed: number): boolean {
    const { network, trail, pairs } = this;
    const from = network.edgeFrom[edge]!;
    const to = network.edgeTo[edge]!;
    pairs[0] = from;
    pairs[1] = trail.value[from]!;
    pairs[2] = to ^ 1;
    pairs[3] = 1 - trail.value[from]! - network.edgeLag[edge]!;
    return trail.post(condition ^ 1, 1 - needed, BY_STORED, trail.store(pairs, 2));
  }
}

/** The k-th run length of the restart sequence 1 1 2 1 1 2 4 ... (Luby, Sinclair, Zuckerman 1993). */
function luby(k: number): number {
  let size = 1;
  while (size < k + 1) size *= 2;
  if (size === k + 1) return size / 2;
  return luby(k - size / 2 + 1);
}
