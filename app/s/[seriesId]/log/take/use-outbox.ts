'use client';

import { useCallback, useEffect, useState } from 'react';
import { addWaiting, dropWaiting, listWaiting, type NewWaiting, type Waiting } from './outbox';
import { knock } from './device';
import { sendWaiting } from './sender';

const RETRY_MS = 15_000;

export interface Outbox {
  /** null: not read yet. */
  readonly waiting: readonly Waiting[] | null;
  readonly isOffline: boolean;
  /** The last thing that happened, in words. */
  readonly told: string;
  /** Counts what has been kept: a change of it is the visible mark. */
  readonly kept: number;
  /** Keeps it on this device, then sends. False: this device could not keep it. */
  readonly keep: (waiting: Omit<NewWaiting, 'seriesId'>) => Promise<boolean>;
  readonly send: () => void;
  /** Takes something that was refused off this device. */
  readonly forget: (key: number) => void;
}

/** The queue of this device for one series: kept first, sent when there is a network. */
export function useOutbox(seriesId: string): Outbox {
  const [waiting, setWaiting] = useState<readonly Waiting[] | null>(null);
  const [isOffline, setOffline] = useState(false);
  const [told, setTold] = useState('');
  const [kept, setKept] = useState(0);

  const send = useCallback(async () => {
    let state = await sendWaiting(seriesId, setTold).catch(() => 'offline' as const);
    // Something may have been kept just as the round before ended.
    const isLeft = (await listWaiting(seriesId).catch(() => [])).some(({ refusal }) => refusal === null);
    if (state === 'sent' && isLeft) state = await sendWaiting(seriesId, setTold).catch(() => 'offline' as const);
    setOffline(state === 'offline');
    setWaiting(await listWaiting(seriesId).catch(() => []));
  }, [seriesId]);

  const keep = useCallback<Outbox['keep']>(async (one) => {
    try {
      await addWaiting({ ...one, seriesId });
    } catch {
      knock([80, 80, 80, 80, 80]);
      setTold('This device could not keep it. Free some room, or write it down, and log it again.');
      return false;
    }
    knock(70);
    setTold(`Kept: ${one.words}`);
    setKept((count) => count + 1);
    setWaiting(await listWaiting(seriesId));
    void send();
    return true;
  }, [seriesId, send]);

  useEffect(() => {
    const leaving = new AbortController();
    const again = () => void send();
    again();
    window.addEventListener('online', again, { signal: leaving.signal });
    document.addEventListener('visibilitychange', again, { signal: leaving.signal });
    const timer = setInterval(again, RETRY_MS);
    return () => {
      leaving.abort();
      clearInterval(timer);
    };
  }, [send]);

  const forget = useCallback(async (key: number) => {
    await dropWaiting(key);
    setWaiting(await listWaiting(seriesId));
  }, [seriesId]);

  return { waiting, isOffline, told, kept, keep, send, forget };
}
