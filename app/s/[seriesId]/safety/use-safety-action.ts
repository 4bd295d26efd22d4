'use client';

import { useState, useTransition } from 'react';
import type { Outcome } from '@/app/_actions/outcome';
import { useNotices } from '@/app/_ui';

/** Runs one action at a time; a refusal is kept as sentences, what was typed stays. */
export function useSafetyAction(seriesId: string) {
  const notices = useNotices();
  const [errors, setErrors] = useState<readonly string[]>([]);
  const [isPending, start] = useTransition();
  const run = (action: () => Promise<Outcome>, done: () => void) => {
    if (isPending) return;
    start(async () => {
      const outcome = await action();
      if (!outcome.ok) return setErrors([...new Set(outcome.issues.map(({ message, fix }) => `${message} ${fix}`))]);
      setErrors([]);
      notices.sayChange(seriesId, outcome.saved);
      done();
    });
  };
  return { errors, isPending, run };
}
