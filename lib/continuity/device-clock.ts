/** A phone's clock may be days off. The moment it was sent, by its own clock, tells how much. */
import { issue, type Issue } from '@/lib/result';
import { instant, type Instant } from '@/lib/units';
import { sayClock } from './camera-clock';

/** Smaller differences are the way through the network and are left alone. */
const TOLERATED_MS = 2 * 60_000;

export interface ClockReading {
  /** When it happened, by the device. */
  readonly deviceAt: Instant;
  /** When it was sent, by the device. */
  readonly sentAt: Instant;
  /** When it came in, by this machine. */
  readonly receivedAt: Instant;
}

/** The moment put right, and a warning when the device's clock is off. An entry never comes from the future. */
export function correctClock({ deviceAt, sentAt, receivedAt }: ClockReading): { readonly at: Instant; readonly warnings: readonly Issue[] } {
  const off = sentAt - receivedAt;
  if (Math.abs(off) <= TOLERATED_MS) return { at: instant(Math.min(deviceAt, receivedAt)), warnings: [] };
  return {
    at: instant(Math.min(deviceAt - off, receivedAt)),
    warnings: [issue('device-clock-off', `The clock of this device is ${sayClock(off / 1000)}; the entry is kept with its time put right.`,
      'Set the clock of the device.', { severity: 'warn' })],
  };
}
