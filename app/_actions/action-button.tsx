'use client';

import { useState, useTransition, type ReactNode } from 'react';
import { Button, Refused, UntilReady, useNotices, type ButtonLook } from '@/app/_ui';
import type { Issue } from '@/lib/result';
import type { Outcome } from './outcome';

interface ActionButtonProps {
  readonly seriesId: string;
  readonly look?: ButtonLook;
  readonly className?: string | undefined;
  readonly run: () => Promise<Outcome>;
  readonly children: ReactNode;
}

/** Saves one change at a press, with its notice; a refusal stays in view with its fix. */
export function ActionButton({ seriesId, look = 'plain', className, run, children }: ActionButtonProps) {
  const { sayChange } = useNotices();
  const [issues, setIssues] = useState<readonly Issue[]>([]);
  const [isPending, start] = useTransition();
  const press = () => {
    if (isPending) return;
    start(async () => {
      const outcome = await run();
      setIssues(outcome.ok ? [] : outcome.issues);
      if (outcome.ok) sayChange(seriesId, outcome.saved);
    });
  };
  return (
    <UntilReady className={className}>
      <Button look={look} aria-disabled={isPending} onClick={press}>{children}</Button>
      <Refused issues={issues} seriesId={seriesId} />
    </UntilReady>
  );
}
