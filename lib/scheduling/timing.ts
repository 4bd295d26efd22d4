import { FAR } from './calendar-index';
import { ELAPSED, WORKING, type Model } from './model';
import { alignPieces, alignPiecesBack } from './pieces';

/** Earliest start at or after `t` that the activity's own calendar allows; FAR when there is none. */
export function alignStart(model: Model, activity: number, t: number): number {
  const index = model.calendar[activity]!;
  if (t >= FAR) return FAR;
  if (index < 0) return t;
  const calendar = model.calendars[index]!;
  const duration = model.duration[activity]!;
  // A milestone may stand on the last minute of an interval.
  let k = calendar.firstEndingAfter(duration === 0 ? t - 1 : t);
  if (model.isSplit[activity] === 1 || duration === 0) {
    if (model.shortest[activity]! > 1) return alignPieces(calendar, { duration, shortest: model.shortest[activity]! }, t, k);
    return k < calendar.count ? Math.max(t, calendar.start[k]!) : FAR;
  }
  for (; k < calendar.count; k += 1) {
    const start = Math.max(t, calendar.start[k]!);
    if (start + duration <= calendar.end[k]!) return start;
  }
  return FAR;
}

/** End of the activity when it starts at `start`, a minute its calendar allows. FAR: its calendar runs out. */
export function endOf(model: Model, activity: number, start: number): number {
  if (start >= FAR) return FAR;
  const duration = model.duration[activity]!;
  const index = model.calendar[activity]!;
  if (index < 0 || model.isSplit[activity] === 0 || duration === 0) return start + duration;
  const calendar = model.calendars[index]!;
  return calendar.timeAtWork(calendar.workedBefore(start) + duration);
}

/** Earliest start that ends at or after `end`. */
export function startForEnd(model: Model, activity: number, end: number): number {
  if (end >= FAR) return FAR;
  const duration = model.duration[activity]!;
  const index = model.calendar[activity]!;
  if (index < 0 || model.isSplit[activity] === 0 || duration === 0) {
    return alignStart(model, activity, Math.max(0, end - duration));
  }
  const calendar = model.calendars[index]!;
  const work = calendar.workedBefore(end - 1) + 1 - duration;
  return alignStart(model, activity, calendar.timeAtWork(work));
}

/** Latest start the calendar allows that ends at or before `end`; -1 when there is none. */
export function latestStart(model: Model, activity: number, end: number): number {
  const duration = model.duration[activity]!;
  const index = model.calendar[activity]!;
  if (end >= FAR) return FAR;
  if (index < 0) return end - duration;
  if (duration === 0) return latestAligned(model, activity, end);
  const calendar = model.calendars[index]!;
  if (model.isSplit[activity] === 0) return latestAligned(model, activity, end - duration);
  const work = calendar.workedBefore(end) - duration;
  if (work < 0) return -1;
  const latest = calendar.lastTimeAtWork(work);
  return model.shortest[activity]! > 1 ? latestAligned(model, activity, latest) : latest;
}

/** Latest start at or before `t` that the calendar allows; -1 when there is none. */
export function latestAligned(model: Model, activity: number, t: number): number {
  const index = model.calendar[activity]!;
  if (index < 0 || t >= FAR) return t;
  const calendar = model.calendars[index]!;
  const duration = model.duration[activity]!;
  if (model.shortest[activity]! > 1) return alignPiecesBack(calendar, { duration, shortest: model.shortest[activity]! }, t);
  // Split work needs one minute left in the interval, a milestone none.
  const room = duration === 0 ? 0 : model.isSplit[activity] === 1 ? 1 : duration;
  for (let k = calendar.lastStartingBy(t); k >= 0; k -= 1) {
    const latest = Math.min(t, calendar.end[k]! - room);
    if (latest >= calendar.start[k]!) return latest;
  }
  return -1;
}

/** Earliest moment of an arc's second event when the first is at `t`. */
export function passArc(model: Model, arc: number, t: number): number {
  if (t >= FAR) return FAR;
  const { arcs } = model;
  const minutes = arcs.minutes[arc]!;
  const kind = arcs.kind[arc]!;
  if (kind === ELAPSED) return t + minutes;
  if (kind === WORKING) {
    if (minutes === 0) return t;
    const calendar = model.calendars[arcs.calendar[arc]!]!;
    return calendar.timeAtWork(calendar.workedBefore(t) + minutes);
  }
  const ready = arcs.tables[arc]!;
  const k = Math.ceil(t / minutes);
  return k < ready.length ? ready[k]! : FAR;
}

/** Latest moment of an arc's first event when the second is at `t`; -1 when there is none. */
export function passArcBack(model: Model, arc: number, t: number): number {
  if (t >= FAR) return FAR;
  const { arcs } = model;
  const minutes = arcs.minutes[arc]!;
  const kind = arcs.kind[arc]!;
  if (kind === ELAPSED) return t - minutes;
  if (kind === WORKING) {
    if (minutes === 0) return t;
    const calendar = model.calendars[arcs.calendar[arc]!]!;
    const work = calendar.workedBefore(t) - minutes;
    return work < 0 ? -1 : calendar.lastTimeAtWork(work);
  }
  const ready = arcs.tables[arc]!;
  let low = 0;
  let high = ready.length;
  while (low < high) {
    const mid = (low + high) >> 1;
    if (ready[mid]! > t) high = mid;
    else low = mid + 1;
  }
  return low === 0 ? -1 : (low - 1) * minutes;
}

/** Moment a state lasts to, its tail and table included, when its activity ends at `end`. */
export function stateEnd(states: Model['states'], row: number, end: number): number {
  const plain = end + states.tail[row]!;
  const table = states.until[row];
  if (!table) return plain;
  const k = Math.ceil(end / table.step);
  return Math.max(plain, k < table.ready.length ? table.ready[k]! : end);
}
