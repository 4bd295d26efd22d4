'use client';

import { useRouter } from 'next/navigation';
import { useEffect, useRef, useState } from 'react';
import { logPath, TextField } from '@/app/_ui';
import styles from './log.module.css';

const PAUSE_MS = 180;

/** Looks through the whole log while one types; without script, on Enter. */
export function LogSearch({ seriesId, text }: { readonly seriesId: string; readonly text: string }) {
  const router = useRouter();
  const [typed, setTyped] = useState(text);
  const asked = useRef(text);
  useEffect(() => {
    if (typed === asked.current) return;
    const timer = setTimeout(() => {
      asked.current = typed;
      router.replace(typed.trim() === '' ? logPath(seriesId) : `${logPath(seriesId)}?find=${encodeURIComponent(typed)}`, { scroll: false });
    }, PAUSE_MS);
    return () => clearTimeout(timer);
  }, [typed, router, seriesId]);
  return (
    <form className={styles.search} action={logPath(seriesId)} aria-label="Find in the log">
      <TextField id="find" label="Find in the whole log" type="search" value={typed} onChange={setTyped} input={{ name: 'find', autoComplete: 'off' }} />
    </form>
  );
}
