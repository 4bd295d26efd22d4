/** A phone's clock may be days off. The moment it was sent, by its own clock, tells how much. */
import { issue, type Issue } from '@/lib/result';
import { instant, type Instant } from '@/lib/units';

/** Smaller differences are the way through the network and are left alone. */
const TOLERATED_MS = 2 * 60_000;
const MS_PER_HOUR = 3_600_000;

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
  const hours = Math.round((Math.abs(off) / MS_PER_HOUR) * 10) / 10;
  const length = hours >= 48 ? `${Math.round(hours / 24)} days` : hours >= 1 ? `${hours} h` : `${Math.round(Math.abs(off) / 60_000)} min`;
  return {
    at: instant(Math.min(deviceAt - off, receivedAt)),
    warnings: [issue('device-clock-off', `The clock of this device is ${length} ${off > 0 ? 'ahead' : 'behind'}; the entry is kept with its time put right.`,
      'Set the clock of the device.', { severity: 'warn' })],
  };
}
