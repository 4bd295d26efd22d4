/** Runs of a forecast: draws the luck of each, replays the plan under it, keeps the ends. */
import { Replay } from '@/lib/scheduling';
import { drawAt, hashName, readTable, retakeShares, thresholdOf } from './draws';
import type { ForecastInput, RunBlock } from './model';

/** Every so many runs the chain that set the finish is followed back. */
const CRITICAL_EVERY = 8;
/** Purposes of draws, apart from each other. */
const LENGTH = 0;
const RETAKE = 1;
const LOST = 2;
const SPOIL = 3;
const DELAY = 4;
const ABSENCE = 5;
const COLD = 6;
const MOST_RETAKES = 12;

interface Length {
  readonly at: number;
  readonly hash: number;
  readonly quantiles: Int32Array;
  readonly group: number;
  /** Draws below which there are no more retakes than the place in the list; empty: none at all. */
  readonly retakes: Float64Array;
  readonly retakeMinutes: number;
  readonly lost: number;
  readonly lostMinutes: number;
  readonly most: number;
}

interface Delay {
  readonly hash: number;
  readonly lag: number;
  readonly activity: number;
  readonly limits: Float64Array;
  readonly ready: readonly (Int32Array | null)[];
  readonly release: Int32Array;
}

interface Spoil {
  readonly hash: number;
  readonly redo: number;
  readonly threshold: number;
}

interface Coat {
  readonly at: number;
  readonly week: number;
  readonly perMille: number;
  readonly lags: Int32Array;
}

/** A simulation ready to run: everything looked up once, so that a run allocates nothing. */
export class Simulation {
  readonly replay: Replay;
  private lengths: readonly Length[] = [];
  private readonly groups: readonly { readonly hash: number; readonly perMille: Int32Array }[];
  private readonly factor: Int32Array;
  private delays: readonly Delay[] = [];
  private readonly spoils: readonly Spoil[];
  private readonly coats: readonly Coat[];
  private readonly isCold: Uint8Array;
  private readonly absences: readonly { readonly hash: number; readonly resource: number; readonly threshold: number; readonly weeks: readonly (readonly { readonly start: number; readonly end: number }[])[] }[];
  private readonly watched: Int32Array;
  private readonly longest = new Map<number, number>();
  private lostShots = 0;
  private spoiltCoats = 0;
  private retakes = 0;

  constructor(private readonly input: ForecastInput) {
    const { policy, problem, seed } = input;
    this.replay = new Replay(problem, policy, input.absences.map((absence) => absence.resource));
    const activity = indexOf(problem.activities);
    const lag = indexOf(problem.lags);
    const resource = indexOf(problem.resources);
    this.setLuck(input);
    this.groups = input.groups.map(({ id, perMille }) => ({ hash: hashName(`factor ${id}`, seed), perMille }));
    this.factor = new Int32Array(this.groups.length);
    this.spoils = input.spoils.map((chance) => ({
      hash: hashName(`coat ${chance.activity}`, seed), redo: activity(chance.redo), threshold: thresholdOf(chance.chance),
    }));
    for (const { activity: coat, redo } of input.spoils) this.replay.standIn[activity(redo)] = activity(coat);
    this.coats = (input.cold?.coats ?? []).map((coat) => ({ at: activity(coat.activity), week: coat.week, perMille: coat.perMille, lags: Int32Array.from(coat.lags, lag) }));
    this.isCold = new Uint8Array(input.cold?.weeks ?? 0);
    this.absences = input.absences.map(({ chance, resource: id, weeks }) => ({ hash: hashName(`absence ${id}`, seed), resource: resource(id), threshold: thresholdOf(chance), weeks }));
    this.watched = Int32Array.from(input.watched, activity);
  }

  /** Other lengths and delays for the runs that follow, of the same problem. */
  setLuck({ delays, lengths }: Pick<ForecastInput, 'lengths' | 'delays'>): void {
    const { problem, seed } = this.input;
    const activity = indexOf(problem.activities);
    const lag = indexOf(problem.lags);
    const group = indexOf(this.input.groups);
    this.lengths = lengths.map((chance) => {
      const at = activity(chance.activity);
      return {
        at, hash: hashName(chance.activity, seed), quantiles: chance.quantiles, group: chance.group === null ? -1 : group(chance.group),
        retakes: limitsOf(retakeShares(chance.takes, chance.retakeChance, MOST_RETAKES)), retakeMinutes: chance.retakeMinutes,
        lost: thresholdOf(chance.lostChance), lostMinutes: chance.lostMinutes,
        most: this.longestOf(at),
      };
    });
    this.delays = delays.map((chance) => ({
      hash: hashName(`delay ${chance.id}`, seed), lag: chance.lag === null ? -1 : lag(chance.lag), activity: chance.activity === null ? -1 : activity(chance.activity),
      limits: limitsOf(chance.outcomes.map(({ share }) => share)), ready: chance.outcomes.map(({ ready }) => ready), release: Int32Array.from(chance.outcomes, ({ release }) => release),
    }));
  }

  /** What is longer than any session takes the longest there is. */
  private longestOf(at: number): number {
    const known = this.longest.get(at) ?? this.replay.longestDuration(at, 8 * this.input.problem.activities[at]!.duration + 480);
    this.longest.set(at, known);
    return known;
  }

  /** Runs number `first` to `first + count`. */
  runMany(first: number, count: number): RunBlock {
    const { replay, watched } = this;
    const finish = new Int32Array(count);
    const ends = new Int32Array(count * watched.length);
    const critical = new Int32Array(replay.count);
    let criticalRuns = 0;
    let missedWindows = 0;
    this.lostShots = 0;
    this.spoiltCoats = 0;
    this.retakes = 0;
    for (let k = 0; k < count; k += 1) {
      const run = first + k;
      this.draw(run);
      replay.run();
      missedWindows += replay.missedWindows;
      const last = this.lastActivity();
      finish[k] = last < 0 ? 0 : replay.end[last]!;
      for (let w = 0; w < watched.length; w += 1) ends[k * watched.length + w] = replay.end[watched[w]!]!;
      if (run % CRITICAL_EVERY !== 0 || last < 0) continue;
      criticalRuns += 1;
      this.markChain(last, critical);
    }
    return { first, count, finish, watched: ends, critical, criticalRuns, lostShots: this.lostShots, spoiltCoats: this.spoiltCoats, missedWindows, retakes: this.retakes };
  }

  /** Sets the luck of a run. */
  draw(run: number): void {
    const { replay } = this;
    replay.reset();
    for (let g = 0; g < this.groups.length; g += 1) this.factor[g] = readTable(this.groups[g]!.perMille, drawAt(this.groups[g]!.hash, run, LENGTH));
    for (const length of this.lengths) replay.duration[length.at] = this.drawLength(length, run);
    for (const delay of this.delays) this.drawDelay(delay, run);
    this.drawCold(run);
    for (const spoil of this.spoils) this.drawSpoil(spoil, run);
    for (const absence of this.absences) {
      for (let week = 0; week < absence.weeks.length; week += 1) {
        if (drawAt(absence.hash, run, ABSENCE + 16 * week) >= absence.threshold) continue;
        for (const { end, start } of absence.weeks[week]!) replay.block(absence.resource, start, end);
      }
    }
  }

  private drawLength(length: Length, run: number): number {
    let minutes = readTable(length.quantiles, drawAt(length.hash, run, LENGTH));
    if (length.group >= 0) minutes = Math.round((minutes * this.factor[length.group]!) / 1000);
    const again = length.retakes.length === 0 ? 0 : drawIndex(length.retakes, drawAt(length.hash, run, RETAKE));
    minutes += again * length.retakeMinutes;
    this.retakes += again;
    if (length.lost > 0 && drawAt(length.hash, run, LOST) < length.lost) {
      minutes += length.lostMinutes;
      this.lostShots += 1;
    }
    return Math.max(1, Math.min(length.most, minutes));
  }

  private drawDelay(delay: Delay, run: number): void {
    const k = drawIndex(delay.limits, drawAt(delay.hash, run, DELAY));
    const ready = delay.ready[k]!;
    if (delay.lag >= 0 && ready !== null) this.replay.setLag(delay.lag, ready);
    if (delay.activity >= 0) this.replay.release[delay.activity] = Math.min(delay.release[k]!, this.replay.horizon);
  }

  private drawCold(run: number): void {
    const { cold } = this.input;
    if (cold === null) return;
    const begins = thresholdOf(cold.begins);
    const lasts = thresholdOf(cold.lasts);
    const hash = hashName('cold', this.input.seed);
    for (let week = 0; week < this.isCold.length; week += 1) {
      const wasCold = week > 0 && this.isCold[week - 1] === 1;
      this.isCold[week] = drawAt(hash, run, COLD + 16 * week) < (wasCold ? lasts : begins) ? 1 : 0;
    }
    const { replay } = this;
    for (const coat of this.coats) {
      if (this.isCold[coat.week] !== 1) continue;
      for (let k = 0; k < coat.lags.length; k += 1) replay.stretchLag(coat.lags[k]!, coat.perMille);
      replay.stretchStates(coat.at, coat.perMille);
    }
  }

  /** A coat that holds is laid once: its redo is left out. */
  private drawSpoil(spoil: Spoil, run: number): void {
    const isSpoilt = drawAt(spoil.hash, run, SPOIL) < spoil.threshold;
    this.replay.isLeftOut[spoil.redo] = isSpoilt ? 0 : 1;
    if (isSpoilt) this.spoiltCoats += 1;
  }

  private lastActivity(): number {
    const { end } = this.replay;
    let last = -1;
    for (let i = 0; i < end.length; i += 1) if (last < 0 || end[i]! > end[last]!) last = i;
    return last;
  }

  private markChain(last: number, critical: Int32Array): void {
    for (let at = last, steps = 0; at >= 0 && steps < this.replay.count; steps += 1) {
      critical[at]! += 1;
      at = this.replay.isPlaced[at] !== 1 ? -1 : this.replay.binding(at);
    }
  }
}

function indexOf(rows: readonly { readonly id: string }[]): (id: string) => number {
  const map = new Map(rows.map((row, index) => [row.id, index]));
  return (id) => {
    const found = map.get(id);
    if (found === undefined) throw new Error(`The forecast names "${id}", which the problem does not have.`);
    return found;
  };
}

/** Outcome that a draw falls to, by the upper limits of all; the last takes what is over. */
function drawIndex(limits: Float64Array, draw: number): number {
  let k = 0;
  while (k < limits.length - 1 && draw >= limits[k]!) k += 1;
  return k;
}

function limitsOf(shares: readonly number[]): Float64Array {
  let sum = 0;
  return Float64Array.from(shares, (share) => thresholdOf((sum += share)));
}
