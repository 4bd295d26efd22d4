'use client';

import { useState, useTransition } from 'react';
import type { Outcome } from '@/app/_actions/outcome';
import { Button, IssueList, UntilReady, useNotices } from '@/app/_ui';
import type { Issue } from '@/lib/result';

interface DoButtonProps {
  readonly seriesId: string;
  readonly word: string;
  readonly run: () => Promise<Outcome>;
}

/** A change at one press, with its notice, or the reasons why not. */
export function DoButton({ seriesId, word, run }: DoButtonProps) {
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
    <UntilReady>
      <Button look="main" onClick={press} aria-disabled={isPending}>{word}</Button>
      {issues.length > 0 ? <div role="alert"><IssueList issues={issues} seriesId={seriesId} /></div> : null}
    </UntilReady>
  );
}
