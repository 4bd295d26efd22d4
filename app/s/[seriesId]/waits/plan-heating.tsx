'use client';

import { useState, useTransition } from 'react';
import { Button, IssueList, UntilReady, useNotices } from '@/app/_ui';
import type { Issue } from '@/lib/result';
import type { HeatingView } from '@/lib/views';
import { planHeatingAction } from './actions';

interface PlanHeatingProps {
  readonly seriesId: string;
  readonly run: NonNullable<HeatingView['run']>;
}

/** Adds the cheapest heating that is ready in time as a run of its own. */
export function PlanHeating({ seriesId, run }: PlanHeatingProps) {
  const { sayChange } = useNotices();
  const [issues, setIssues] = useState<readonly Issue[]>([]);
  const [isPending, start] = useTransition();
  const add = () => {
    if (isPending) return;
    start(async () => {
      const outcome = await planHeatingAction(seriesId, run);
      setIssues(outcome.ok ? [] : outcome.issues);
      if (outcome.ok) sayChange(seriesId, outcome.saved);
    });
  };
  return (
    <UntilReady>
      <Button look="main" onClick={add} aria-disabled={isPending}>Heat like this</Button>
      {issues.length > 0 ? <div role="alert"><IssueList issues={issues} seriesId={seriesId} /></div> : null}
    </UntilReady>
  );
}
