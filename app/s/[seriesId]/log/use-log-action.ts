'use client';

import { useState, useTransition } from 'react';
import type { Outcome } from '@/app/_actions/outcome';
import { useNotices } from '@/app/_ui';
import type { LogOutcome } from './actions';

export interface LogAction {
  readonly isPending: boolean;
  readonly errors: readonly string[];
  /** Runs it; `then` follows when it was done. */
  readonly run: (action: () => Promise<LogOutcome | Outcome>, then?: () => void) => void;
}

/** One action at a time, its answer as a notice (with Undo where a record was changed) or as errors beside the control. */
export function useLogAction(seriesId: string): LogAction {
  const notices = useNotices();
  const [errors, setErrors] = useState<readonly string[]>([]);
  const [isPending, start] = useTransition();
  const run: LogAction['run'] = (action, then) => {
    if (isPending) return;
    start(async () => {
      const outcome = await action();
      if (!outcome.ok) return setErrors(outcome.issues.map(({ message, fix }) => `${message} ${fix}`));
      setErrors([]);
      if ('saved' in outcome) notices.sayChange(seriesId, outcome.saved);
      else notices.say(outcome.words);
      then?.();
    });
  };
  return { isPending, errors, run };
}
