import type { Atoms } from './atoms';
import type { ClauseBase } from './clauses';
import { sourceNeeded } from './network';
import type { Network } from './network';
import { BY_CLAUSE, BY_DECISION, BY_EDGE, BY_STORED, grow } from './trail';
import type { Trail } from './trail';

const BEYOND = 0x7fffffff;
/** A mark: part of the cause, but implied by the rest of it. */
const DROPPED = 2;
/** How deep a literal's reasons are followed to find it superfluous. */
const DEEPEST = 12;

/**
 * What a conflict teaches: from its explanation back to the first single cause at the newest level.
 * `learnt` then holds a clause: pairs (bound, value), the literal to assert in place 0, one of the next newest level in place 1.
 */
export class Analysis {
  readonly learnt: Int32Array;
  literals = 0;
  /** Level to go back to. */
  backTo = 0;
  /** Distinct levels in the clause. */
  spread = 0;
  /** 1 where the trail's entry is part of the cause; `need` is the value needed of it. */
  private marked = new Uint8Array(1024);
  private need = new Int32Array(1024);
  /** Greatest value known superfluous and least known not to be, by entry. */
  private superfluous = new Int32Array(1024);
  private essential = new Int32Array(1024);
  private visited = new Int32Array(1024);
  private visitList = new Int32Array(256);
  private visits = 0;
  private cause = new Int32Array(256);
  private causes = 0;
  /** Explanations of nested questions share one stack. */
  private reasons = new Int32Array(4096);
  private levelStamp = new Int32Array(256);
  private stamp = 0;
  private readonly strongest: Int32Array;
  private newest = 0;
  private atNewest = 0;

  constructor(
    private readonly network: Network,
    private readonly trail: Trail,
    private readonly clauses: ClauseBase,
    private readonly atoms: Atoms,
  ) {
    const bounds = trail.value.length;
    this.learnt = new Int32Array(2 * bounds + 4);
    this.strongest = new Int32Array(bounds).fill(-1);
  }

  /** Analyses the failed step. False when it fails at the root: there is no solution. */
  learn(): boolean {
    const trail = this.trail;
    if (trail.size > this.marked.length) this.makeRoom();
    let end = this.explain(trail.failedKind, trail.failedData, trail.failedValue, 0);
    if (trail.failedBound >= 0) {
      this.reasons[end] = trail.failedBound ^ 1;
      this.reasons[end + 1] = 1 - trail.failedValue;
      end += 2;
    }
    this.newest = 0;
    for (let k = 0; k < end; k += 2) {
      this.newest = Math.max(this.newest, trail.level[trail.entryOf(this.reasons[k]!, this.reasons[k + 1]!)]!);
    }
    if (this.newest === 0) return false;
    this.atNewest = 0;
    this.causes = 0;
    for (let k = 0; k < end; k += 2) this.mark(this.reasons[k]!, this.reasons[k + 1]!);
    const first = this.findFirstCause();
    this.minimise();
    this.writeClause(first);
    return true;
  }

  private mark(b: number, v: number): void {
    const trail = this.trail;
    const e = trail.entryOf(b, v);
    const level = trail.level[e]!;
    if (level === 0) return;
    this.atoms.bump(b, v);
    if (this.marked[e] === 1) {
      if (v > this.need[e]!) this.need[e] = v;
      return;
    }
    this.marked[e] = 1;
    this.need[e] = v;
    if (level === this.newest) this.atNewest++;
    else {
      if (this.causes + 1 >= this.cause.length) this.cause = grow(this.cause, this.causes + 2);
      this.cause[this.causes++] = e;
    }
  }

  /** Walks back until one entry of the newest level is left. */
  private findFirstCause(): number {
    const trail = this.trail;
    let e = trail.size - 1;
    for (;;) {
      while (this.marked[e] === 0) e--;
      if (this.atNewest === 1) return e;
      this.atNewest--;
      this.marked[e] = 0;
      const kind = trail.kind[e]!;
      if (kind === BY_CLAUSE) this.clauses.bump(trail.data[e]!);
      const end = this.explain(kind, trail.data[e]!, this.need[e]!, 0);
      for (let k = 0; k < end; k += 2) this.mark(this.reasons[k]!, this.reasons[k + 1]!);
      e--;
    }
  }

  /** Writes why a bound reached v into `reasons` from `at` on; answers the end. */
  private explain(kind: number, data: number, v: number, at: number): number {
    let end = at;
    if (kind === BY_EDGE) {
      if (end + 4 > this.reasons.length) this.reasons = grow(this.reasons, end + 4);
      this.reasons[end] = this.network.edgeFrom[data]!;
      this.reasons[end + 1] = sourceNeeded(this.network, data, v);
      end += 2;
      const condition = this.network.edgeIf[data]!;
      if (condition < 0) return end;
      this.reasons[end] = condition;
      this.reasons[end + 1] = condition & 1 ? 0 : 1;
      return end + 2;
    }
    const isClause = kind === BY_CLAUSE;
    const source = isClause ? this.clauses.arena : this.trail.stored;
    const count = source[data]!;
    if (end + 2 * count > this.reasons.length) this.reasons = grow(this.reasons, end + 2 * count);
    if (isClause) {
      for (let k = data + 4, last = data + 2 + 2 * count; k < last; k += 2) {
        this.reasons[end] = source[k]! ^ 1;
        this.reasons[end + 1] = 1 - source[k + 1]!;
        end += 2;
      }
      return end;
    }
    if (kind !== BY_STORED) return end;
    for (let k = data + 1, last = data + 1 + 2 * count; k < last; k++) this.reasons[end++] = source[k]!;
    return end;
  }

  /** Sets aside causes that the other causes imply. */
  private minimise(): void {
    for (let k = 0; k < this.causes; k++) {
      const e = this.cause[k]!;
      if (this.trail.kind[e] !== BY_DECISION && this.isImplied(e, this.need[e]!, 0, 0)) this.marked[e] = DROPPED;
    }
    for (let k = 0; k < this.visits; k++) this.visited[this.visitList[k]!] = 0;
    this.visits = 0;
  }

  /** True when the reasons of entry e, for value v, all follow from causes. */
  private isImplied(e: number, v: number, at: number, depth: number): boolean {
    const trail = this.trail;
    const end = this.explain(trail.kind[e]!, trail.data[e]!, v, at);
    for (let k = at; k < end; k += 2) {
      if (!this.follows(this.reasons[k]!, this.reasons[k + 1]!, end, depth + 1)) return false;
    }
    return true;
  }

  private follows(b: number, v: number, at: number, depth: number): boolean {
    const trail = this.trail;
    const e = trail.entryOf(b, v);
    if (trail.level[e] === 0) return true;
    if (this.marked[e] !== 0 && this.need[e]! >= v) return true;
    if (this.visited[e] === 0) {
      this.visited[e] = 1;
      this.superfluous[e] = -BEYOND;
      this.essential[e] = BEYOND;
      this.noteVisit(e);
    }
    if (this.superfluous[e]! >= v) return true;
    if (this.essential[e]! <= v) return false;
    if (depth < DEEPEST && trail.kind[e] !== BY_DECISION && this.isImplied(e, v, at, depth)) {
      this.superfluous[e] = v;
      return true;
    }
    this.essential[e] = v;
    return false;
  }

  private noteVisit(e: number): void {
    if (this.visits === this.visitList.length) this.visitList = grow(this.visitList, this.visits + 1);
    this.visitList[this.visits++] = e;
  }

  /** The clause is the negation of the causes; of two causes on one bound the newer implies the older. */
  private writeClause(first: number): void {
    const { trail, marked, strongest, cause } = this;
    cause[this.causes] = first;
    for (let k = 0; k <= this.causes; k++) {
      const e = cause[k]!;
      const b = trail.bound[e]!;
      if (marked[e] === 1 && e > strongest[b]!) strongest[b] = e;
    }
    this.literals = 1;
    this.backTo = 0;
    this.spread = 1;
    if (trail.depth >= this.levelStamp.length) this.levelStamp = grow(this.levelStamp, trail.depth + 1);
    this.stamp++;
    for (let k = 0; k < this.causes; k++) {
      const e = cause[k]!;
      if (strongest[trail.bound[e]!] === e && marked[e] === 1) this.writeLiteral(e);
      marked[e] = 0;
    }
    const b = trail.bound[first]!;
    this.learnt[0] = b ^ 1;
    this.learnt[1] = 1 - this.need[first]!;
    marked[first] = 0;
    for (let k = 0; k <= this.causes; k++) strongest[trail.bound[cause[k]!]!] = -1;
  }

  private writeLiteral(e: number): void {
    const { trail, learnt } = this;
    let at = 2 * this.literals++;
    const level = trail.level[e]!;
    if (this.levelStamp[level] !== this.stamp) {
      this.levelStamp[level] = this.stamp;
      this.spread++;
    }
    if (level > this.backTo) {
      this.backTo = level;
      if (at > 2) {
        learnt[at] = learnt[2]!;
        learnt[at + 1] = learnt[3]!;
        at = 2;
      }
    }
    learnt[at] = trail.bound[e]! ^ 1;
    learnt[at + 1] = 1 - this.need[e]!;
  }

  private makeRoom(): void {
    const size = Math.max(this.trail.size, this.marked.length * 2);
    this.marked = new Uint8Array(size);
    this.need = new Int32Array(size);
    this.superfluous = new Int32Array(size);
    this.essential = new Int32Array(size);
    this.visited = new Int32Array(size);
  }
}
