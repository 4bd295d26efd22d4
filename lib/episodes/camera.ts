/** Camera arithmetic: card space, batteries, time-lapses, shooting ratio. */
import type { CameraKit } from '@/lib/build';
import { fail, issue, ok, type Issue, type Result } from '@/lib/result';

/** Where a series starts: one camera, two cards, three batteries. Common practice, no source. */
export const USUAL_KIT: CameraKit = { cameras: 1, bitRate: 100, cards: [64, 64], batteries: 3, batteryMinutes: 90, fillLimit: 0.9 };

/** Shooting ratio, minutes recorded for each minute on screen: 10 to 30 is common practice, no source. */
export const USUAL_RATIO = 15;

/** Gigabytes an hour: Mb/s · 3600 / 8 / 1000. @example gigabytesPerHour(100) // 45 */
export function gigabytesPerHour(bitRate: number): number {
  return bitRate * 0.45;
}

/** Refuses negative or absurd kit: `camera-count`, `bit-rate`, `card-size`, `battery`, `card-fill`. All faults are told. */
export function checkKit(kit: CameraKit): Result<CameraKit> {
  const faults: Issue[] = [];
  const refuse = (isFit: boolean, code: string, message: string, fix: string, path: readonly (string | number)[]): void => {
    if (!isFit) faults.push(issue(code, message, fix, { path }));
  };
  refuse(Number.isInteger(kit.cameras) && kit.cameras >= 1 && kit.cameras <= 20, 'camera-count', `${kit.cameras} cameras make no sense.`, 'Type a whole number from 1 to 20.', ['cameras']);
  refuse(kit.bitRate > 0 && kit.bitRate <= 10_000, 'bit-rate', `A bit rate of ${kit.bitRate} Mb/s makes no sense.`, 'Type the megabits a second from the camera’s manual, such as 100.', ['bitRate']);
  kit.cards.forEach((size, index) => refuse(size > 0 && size <= 100_000, 'card-size', `Card ${index + 1} holds ${size} GB; a card holds more than 0 GB.`, 'Type the size on its label.', ['cards', index]));
  refuse(Number.isInteger(kit.batteries) && kit.batteries >= 0, 'battery', `${kit.batteries} batteries make no sense.`, 'Type a whole number, 0 for mains.', ['batteries']);
  refuse(kit.batteryMinutes > 0, 'battery', `A battery that lasts ${kit.batteryMinutes} min makes no sense.`, 'Type the minutes one battery records.', ['batteryMinutes']);
  refuse(kit.fillLimit > 0 && kit.fillLimit <= 1, 'card-fill', `Cards cannot be filled to ${Math.round(kit.fillLimit * 100)} %.`, 'Type a share above 0 and up to 100 %.', ['fillLimit']);
  return faults.length > 0 ? fail(faults) : ok(kit);
}

/** What a session records, and whether the kit holds it. */
export interface CameraNeed {
  /** Minutes recorded by each camera. */
  readonly minutes: number;
  readonly gigabytes: number;
  /** What the cards hold up to the fill limit. */
  readonly space: number;
  /** Batteries used by all cameras together; 0 on mains. */
  readonly batteries: number;
  /** Too little space stops, too few batteries warn. */
  readonly issues: readonly Issue[];
}

const oneDecimal = (value: number): number => Math.round(value * 10) / 10;

/**
 * Space and batteries for so many recorded minutes a camera. The kit has been checked; no batteries mean mains.
 * @example cameraNeed({ cameras: 2, bitRate: 100, cards: [64, 64], batteries: 4, batteryMinutes: 90, fillLimit: 0.9 }, 60).gigabytes // 90
 */
export function cameraNeed(kit: CameraKit, minutes: number): CameraNeed {
  const gigabytes = (gigabytesPerHour(kit.bitRate) * kit.cameras * minutes) / 60;
  const space = kit.cards.reduce((sum, size) => sum + size, 0) * kit.fillLimit;
  const batteries = kit.batteries === 0 ? 0 : kit.cameras * Math.ceil(minutes / kit.batteryMinutes);
  const issues: Issue[] = [];
  if (gigabytes > space) {
    issues.push(issue('card-space', `The recording takes ${oneDecimal(gigabytes)} GB and the cards hold ${oneDecimal(space)} GB.`, `Bring ${Math.ceil(gigabytes - space)} GB more, or copy and verify a card halfway.`));
  }
  if (batteries > kit.batteries) {
    issues.push(issue('batteries', `The recording uses ${batteries} batteries and there are ${kit.batteries}.`, `Charge one while another records, or bring ${batteries - kit.batteries} more.`, { severity: 'warn' }));
  }
  return { minutes, gigabytes, space, batteries, issues };
}

export interface TimeLapse {
  /** Seconds between frames, whole. */
  readonly interval: number;
  /** The interval before rounding down. */
  readonly exactInterval: number;
  readonly frames: number;
  /** Length of the clip at that interval, seconds. */
  readonly clip: number;
}

/**
 * The interval that turns a wait into a clip: duration / (clip · frames a second), set to the next whole second below, so that
 * the clip is no shorter than wished. Fails with `time-lapse` for lengths that are not above 0 or too short for a frame a second.
 * @example timeLapse(120, 10, 25) // 28 s, 257 frames, 10.28 s
 */
export function timeLapse(durationMinutes: number, clipSeconds: number, framesPerSecond: number): Result<TimeLapse> {
  if (!(durationMinutes > 0 && clipSeconds > 0 && framesPerSecond > 0) || !Number.isFinite(durationMinutes / clipSeconds / framesPerSecond)) {
    return fail([issue('time-lapse', `A wait of ${durationMinutes} min, a clip of ${clipSeconds} s and ${framesPerSecond} frames a second make no time-lapse.`, 'Type lengths above 0.')]);
  }
  const exactInterval = (durationMinutes * 60) / (clipSeconds * framesPerSecond);
  const interval = Math.floor(exactInterval + 1e-9);
  if (interval < 1) {
    return fail([issue('time-lapse', `A wait of ${durationMinutes} min is too short for a clip of ${clipSeconds} s with a second or more between frames.`, 'Film it at full speed, or make the clip shorter.')]);
  }
  const frames = Math.floor((durationMinutes * 60) / interval);
  return ok({ interval, exactInterval, frames, clip: frames / framesPerSecond });
}

/** Minutes recorded for each minute on screen; null when nothing is on screen. @example shootingRatio(300, 15) // 20 */
export function shootingRatio(recordedMinutes: number, screenMinutes: number): number | null {
  return screenMinutes > 0 ? recordedMinutes / screenMinutes : null;
}
