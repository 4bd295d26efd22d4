import type { Constructor, Reference } from './construct';
import type { Incumbent } from './incumbent';
import type { Model } from './model';
import { TERMS } from './objective';
import { Moves } from './moves';
import type { Order } from './order';
import { PLACED } from './placer';
import type { Random } from './random';
import { compareTerms } from './score';

/** How many steps back a schedule is compared with before it is turned down. */
const MEMORY = 24;
/** Steps without anything better after which late work is put ahead in the best list, however bad that is, and the search goes on from there. */
const PATIENCE = 200;
/** One step in so many tries what it costs, or saves, to leave a span of the upkeep empty: such a schedule is built from its beginning. */
const CLOSE_ONE_IN = 12;

interface LocalSearchInput {
  readonly model: Model;
  readonly order: Order;
  readonly random: Random;
  readonly builder: Constructor;
  readonly incumbent: Incumbent;
}

/**
 * Late-acceptance search over activity lists (Burke and Bykov 2017): a move is taken when the schedule is no worse than
 * the current one or the one so many steps ago, all terms of the objective in their order. Only what comes after the
 * first change of the list is built again. Where that leads no further it goes on from the best with a larger change (iterated local search,
 * Lourenço, Martin and Stützle 2003).
 */
export class LocalSearch {
  private readonly list: Int32Array;
  private readonly bestList: Int32Array;
  private readonly bestSteady: Uint8Array;
  private readonly trial: Int32Array;
  private readonly steady: Uint8Array;
  private readonly trialSteady: Uint8Array;
  private readonly end: Int32Array;
  private readonly terms = new Float64Array(TERMS);
  private readonly memory = Array.from({ length: MEMORY }, () => new Float64Array(TERMS));
  private readonly reference: { readonly sequence: Int32Array; readonly steady: Uint8Array; readonly start: Int32Array; readonly crew: Int32Array };
  private readonly moves: Moves;
  /** Spans of the upkeep that the current, the tried and the best schedule leave empty. */
  private readonly closed: Uint8Array;
  private readonly trialClosed: Uint8Array;
  private readonly bestClosed: Uint8Array;
  private readonly canBeSteady: boolean;
  /** Otherwise the cost is looked at when nothing better has come for a while. */
  private readonly isCostFirst: boolean;
  private steps = 0;
  /** Steps since the best after the last larger change, and its terms. */
  private calm = 0;
  private readonly nearBest = new Float64Array(TERMS).fill(Infinity);
  private idle = 0;

  constructor(private readonly input: LocalSearchInput) {
    const { model, order, random } = input;
    this.list = new Int32Array(model.count);
    this.bestList = new Int32Array(model.count);
    this.bestSteady = new Uint8Array(model.count);
    this.trial = new Int32Array(model.count);
    this.steady = new Uint8Array(model.count);
    this.trialSteady = new Uint8Array(model.count);
    this.end = new Int32Array(model.count);
    this.reference = { sequence: new Int32Array(model.count), steady: this.steady, start: new Int32Array(model.count), crew: new Int32Array(model.crew.from[model.count]!) };
    this.closed = new Uint8Array(model.objective.upkeep.spans.count);
    this.trialClosed = this.closed.slice();
    this.bestClosed = this.closed.slice();
    this.moves = new Moves(model, order, random);
    this.isCostFirst = model.objective.rank.cost === 1;
    this.canBeSteady = model.previous.some((at) => at >= 0);
  }

  /** Builds the schedule of a list and goes on from there. */
  start(list: Int32Array, steady: Uint8Array): void {
    this.trial.set(list);
    this.trialSteady.set(steady);
    this.beginAnew();
    this.keepBest();
  }

  /** Makes the schedule of the tried list the current one, whatever its value; true when it is the best so far. */
  private beginAnew(): boolean {
    const { builder, incumbent } = this.input;
    const { improvements } = incumbent;
    builder.build(this.trial, this.trialSteady);
    this.take(incumbent.offer(builder.decider));
    for (const past of this.memory) past.set(this.terms);
    return incumbent.improvements > improvements;
  }

  /** Tries one move. */
  step(): void {
    const { builder, incumbent } = this.input;
    this.trial.set(this.list);
    this.trialSteady.set(this.steady);
    this.moves.apply(this.trial, { start: this.reference.start, end: this.end });
    if (this.canBeSteady) this.shakeSteady();
    this.trialClosed.set(this.closed);
    if (this.closed.length > 0 && (this.isCostFirst || this.idle > this.list.length)) this.shakeClosed();
    const past = this.memory[this.steps % MEMORY]!;
    this.steps += 1;
    const limit = compareTerms(past, this.terms) > 0 ? past : this.terms;
    this.idle += 1;
    // A schedule with other spans closed says nothing of where this one's work fits.
    builder.close(this.trialClosed);
    const isAlike = this.trialClosed.every((is, k) => is === this.closed[k]);
    if (builder.rebuild(this.trial, this.trialSteady, isAlike ? this.like() : null, limit)) {
      const { improvements } = incumbent;
      const terms = incumbent.offer(builder.decider);
      if (incumbent.improvements > improvements) this.keepBest();
      if (compareTerms(terms, limit) <= 0) {
        this.take(terms);
      }
    }
    if (compareTerms(this.terms, past) < 0) past.set(this.terms);
    this.calm += 1;
    if (compareTerms(this.terms, this.nearBest) < 0) {
      this.nearBest.set(this.terms);
      this.calm = 0;
    }
    if (this.calm > PATIENCE) this.leap();
  }

  private keepBest(): void {
    this.idle = 0;
    this.bestList.set(this.trial);
    this.bestSteady.set(this.trialSteady);
    this.bestClosed.set(this.trialClosed);
  }

  private like(): Reference | null {
    return this.terms[0] === 0 ? this.reference : null;
  }

  /** What the move was about may leave its previous start, or is to go back to it. */
  private shakeSteady(): void {
    const { random } = this.input;
    const isKept = random.below(4) === 0 ? 0 : 1;
    for (const activity of this.moves.touched) this.trialSteady[activity] = isKept;
  }

  /** Now and then one span is closed that was open, or the other way round. */
  private shakeClosed(): void {
    const { random } = this.input;
    if (random.below(CLOSE_ONE_IN) > 0) return;
    const span = random.below(this.closed.length);
    this.trialClosed[span] = 1 - this.trialClosed[span]!;
  }

  /** Makes what was just built the current schedule. */
  private take(terms: Float64Array): void {
    const { builder, model } = this.input;
    this.terms.set(terms);
    this.list.set(this.trial);
    this.steady.set(this.trialSteady);
    this.closed.set(this.trialClosed);
    this.end.set(builder.placer.end);
    builder.copySequence(this.reference.sequence);
    this.reference.start.set(builder.placer.start);
    this.reference.crew.set(builder.placer.crew);
    for (let i = 0; i < model.count; i += 1) if (builder.placer.status[i] !== PLACED) this.end[i] = model.horizon;
  }

  /** Puts some late work with all it needs ahead in the best list, and goes on from there. */
  private leap(): void {
    this.calm = 0;
    this.trial.set(this.bestList);
    this.trialSteady.set(this.bestSteady);
    this.trialClosed.set(this.bestClosed);
    this.moves.pullLate(this.trial, this.end);
    this.input.builder.close(this.trialClosed);
    if (this.beginAnew()) this.keepBest();
    this.nearBest.set(this.terms);
  }
}
