'use client';

import { useState, useTransition } from 'react';
import { Button, Refused, UntilReady, useNotices } from '@/app/_ui';
import type { Issue } from '@/lib/result';
import { fitRoomAction } from './actions';

interface FitButtonProps {
  readonly seriesId: string;
  readonly revision: number;
  readonly timeConstant: number;
  readonly offset: number;
  /** The air that was measured. */
  readonly airZone: string;
}

/** Takes the fitted values over into the room. */
export function FitButton({ seriesId, revision, timeConstant, offset, airZone }: FitButtonProps) {
  const { sayChange } = useNotices();
  const [issues, setIssues] = useState<readonly Issue[]>([]);
  const [isPending, start] = useTransition();
  const use = () => {
    if (isPending) return;
    start(async () => {
      const outcome = await fitRoomAction(seriesId, revision, { timeConstant, offset, airZone });
      setIssues(outcome.ok ? [] : outcome.issues);
      if (outcome.ok) sayChange(seriesId, outcome.saved);
    });
  };
  return (
    <UntilReady>
      <Button look="main" onClick={use} aria-disabled={isPending}>Use these values for the room</Button>
      <Refused issues={issues} seriesId={seriesId} />
    </UntilReady>
  );
}
