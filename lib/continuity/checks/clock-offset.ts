import { startWith } from '@/lib/build';
import type { LogEntry } from '../log-entry';
import { makeCheck } from './check';

/** Larger differences are worth a word: seconds of a camera, milliseconds of a device. */
const CAMERA_SECONDS = 1;
const DEVICE_MS = 2 * 60_000;

/** 32: the clocks of cameras and devices agree with the workshop's. */
export const clockOffset = makeCheck(32, 'warn', 'The clocks of cameras and phones are right', (facts) => {
  const cameras = facts.document.cameras.filter(({ clockOffset: off }) => Math.abs(off) > CAMERA_SECONDS).map((camera) => ({
    key: camera.id, about: [camera], message: `${startWith(camera)} runs ${Math.abs(camera.clockOffset)} s ${camera.clockOffset > 0 ? 'ahead' : 'behind'}; its takes are put right by that.`,
    fix: 'Set its clock, then set the difference to 0.',
  }));
  const last = new Map<string, LogEntry>();
  for (const entry of facts.entries) last.set(entry.device, entry);
  const devices = [...last].filter(([, entry]) => Math.abs(entry.deviceAt - entry.at) > DEVICE_MS).map(([device, entry]) => ({
    key: `device/${device}`, about: [], message: `The clock of the device “${device}” is ${Math.round(Math.abs(entry.deviceAt - entry.at) / 60_000)} min ${entry.deviceAt > entry.at ? 'ahead' : 'behind'}; its entries are put right.`,
    fix: 'Set the clock of the device.',
  }));
  return [...cameras, ...devices];
});
