'use client';

import type { ReactNode } from 'react';
import { ActionButton } from '@/app/_actions/action-button';
import { arrangeSegmentsAction, planByExperienceAction } from './actions';
import styles from './episodes.module.css';

interface ArrangeButtonProps {
  readonly seriesId: string;
  readonly arrangement: readonly { readonly episodeId: string; readonly segmentIds: readonly string[] }[];
  readonly children: ReactNode;
}

/** Puts the segments as a proposal says. */
export function ArrangeButton({ seriesId, arrangement, children }: ArrangeButtonProps) {
  return <ActionButton seriesId={seriesId} className={styles.action} run={() => arrangeSegmentsAction(seriesId, arrangement)}>{children}</ActionButton>;
}

/** Turns planning by experience on or off. */
export function ExperienceSwitch({ seriesId, revision, isOn }: { readonly seriesId: string; readonly revision: number; readonly isOn: boolean }) {
  return (
    <ActionButton seriesId={seriesId} className={styles.action} look={isOn ? 'plain' : 'main'} run={() => planByExperienceAction(seriesId, revision, !isOn)}>
      {isOn ? 'Plan by the typed times again' : 'Plan by experience'}
    </ActionButton>
  );
}
