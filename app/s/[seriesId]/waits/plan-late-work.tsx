'use client';

import { ActionButton } from '@/app/_actions/action-button';
import type { CuringCoat } from '@/lib/views';
import { lateWorkAction } from './actions';

interface PlanLateWorkProps {
  readonly seriesId: string;
  readonly late: NonNullable<CuringCoat['late']>;
}

/** Makes the work after a missed recoat window tasks of the plan. */
export function PlanLateWork({ seriesId, late }: PlanLateWorkProps) {
  return <ActionButton seriesId={seriesId} look={late.isPlanned ? 'plain' : 'main'} run={() => lateWorkAction(seriesId, late.coatTaskId, late.nextTaskId)}>{late.word}</ActionButton>;
}
