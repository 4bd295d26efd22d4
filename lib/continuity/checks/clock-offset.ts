import { startWith } from '@/lib/build';
import { recordedSpan, sayClock } from '../camera-clock';
import { sayAt, type Facts } from '../facts';
import type { LogEntry } from '@/lib/takes';
import { makeCheck } from './check';

/** Larger differences are worth a word: seconds of a camera, milliseconds of a device, and of a take from when it was logged. */
const CAMERA_SECONDS = 1;
const DEVICE_MS = 2 * 60_000;
const TAKE_MS = 10 * 60_000;

/** Cameras whose last take was recorded, by their timecode, long before or after it was logged. */
function strayCameras(facts: Facts) {
  return facts.document.cameras.flatMap((camera) => {
    const last = facts.takes.findLast(({ take }) => take.cameraId === camera.id && take.startFrame !== null);
    const span = last === undefined ? null : recordedSpan(last, camera, facts.document.series.zone);
    if (last === undefined || span === null) return [];
    const off = (span.end ?? span.start) - last.at;
    if (Math.abs(off) <= TAKE_MS) return [];
    return [{
      key: `timecode/${camera.id}`, about: [camera], message: `The timecode of ${camera.name} gives ${sayAt(facts, span.end ?? span.start)} for a take that was logged on ${sayAt(facts, last.at)}: ${sayClock(off / 1000)}.`,
      fix: 'Film the workshop clock, and write down what the camera’s clock is off.',
    }];
  });
}

/** Devices whose last entry came with a clock that is off. */
function wrongDevices(facts: Facts) {
  const last = new Map<string, LogEntry>();
  for (const entry of facts.entries) last.set(entry.device, entry);
  return [...last].filter(([, entry]) => Math.abs(entry.deviceAt - entry.at) > DEVICE_MS).map(([device, entry]) => ({
    key: `device/${device}`, about: [], message: `The clock of the device “${device}” is ${sayClock((entry.deviceAt - entry.at) / 1000)}; its entries are put right.`, fix: 'Set the clock of the device.',
  }));
}

/** 32: the clocks of cameras and devices agree with the workshop's. */
export const clockOffset = makeCheck(32, 'warn', 'The clocks of cameras and phones are right', (facts) => {
  const cameras = facts.document.cameras.filter(({ clockOffset: off }) => Math.abs(off) > CAMERA_SECONDS).map((camera) => ({
    key: camera.id, about: [camera], message: `${startWith(camera)} runs ${sayClock(camera.clockOffset)}; its takes are put right by that.`, fix: 'Set its clock, then set the difference to 0.',
  }));
  return [...cameras, ...strayCameras(facts), ...wrongDevices(facts)];
});
