'use client';

import { useState, useTransition, type ReactNode } from 'react';
import type { Outcome } from '@/app/_actions/outcome';
import { Button, IssueList, UntilReady, useNotices, type ButtonLook } from '@/app/_ui';
import type { Issue } from '@/lib/result';
import { arrangeSegmentsAction, planByExperienceAction } from './actions';
import styles from './episodes.module.css';

interface ActionButtonProps {
  readonly seriesId: string;
  readonly look?: ButtonLook;
  readonly run: () => Promise<Outcome>;
  readonly children: ReactNode;
}

/** A button that saves one change; a refusal stays in view with its fix. */
function ActionButton({ seriesId, look = 'plain', run, children }: ActionButtonProps) {
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
    <UntilReady className={styles.action}>
      <Button look={look} aria-disabled={isPending} onClick={press}>{children}</Button>
      {issues.length > 0 ? <div role="alert"><IssueList issues={issues} seriesId={seriesId} /></div> : null}
    </UntilReady>
  );
}

interface ArrangeButtonProps {
  readonly seriesId: string;
  readonly arrangement: readonly { readonly episodeId: string; readonly segmentIds: readonly string[] }[];
  readonly children: ReactNode;
}

/** Puts the segments as a proposal says. */
export function ArrangeButton({ seriesId, arrangement, children }: ArrangeButtonProps) {
  return <ActionButton seriesId={seriesId} run={() => arrangeSegmentsAction(seriesId, arrangement)}>{children}</ActionButton>;
}

/** Turns planning by experience on or off. */
export function ExperienceSwitch({ seriesId, revision, isOn }: { readonly seriesId: string; readonly revision: number; readonly isOn: boolean }) {
  return (
    <ActionButton seriesId={seriesId} look={isOn ? 'plain' : 'main'} run={() => planByExperienceAction(seriesId, revision, !isOn)}>
      {isOn ? 'Plan by the typed times again' : 'Plan by experience'}
    </ActionButton>
  );
}
