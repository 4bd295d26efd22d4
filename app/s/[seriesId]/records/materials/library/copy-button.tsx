'use client';

import { useState, useTransition } from 'react';
import { Button, IssueList, UntilReady, useNotices } from '@/app/_ui';
import type { Issue } from '@/lib/result';
import { copyMaterialAction } from './actions';

interface CopyButtonProps {
  readonly seriesId: string;
  readonly libraryId: string;
  readonly name: string;
}

/** Copies one material; the notice offers to take it back. */
export function CopyButton({ seriesId, libraryId, name }: CopyButtonProps) {
  const { sayChange } = useNotices();
  const [issues, setIssues] = useState<readonly Issue[]>([]);
  const [isPending, start] = useTransition();
  const copy = () => {
    if (isPending) return;
    start(async () => {
      const outcome = await copyMaterialAction(seriesId, libraryId);
      setIssues(outcome.ok ? [] : outcome.issues);
      if (outcome.ok) sayChange(seriesId, outcome.saved);
    });
  };
  return (
    <UntilReady>
      <Button onClick={copy} aria-disabled={isPending}>Copy to the series<span className="visually-hidden">: {name}</span></Button>
      {issues.length > 0 ? <div role="alert"><IssueList issues={issues} seriesId={seriesId} /></div> : null}
    </UntilReady>
  );
}
