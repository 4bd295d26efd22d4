'use client';

import type { CuringCoat } from '@/lib/views';
import { lateWorkAction } from './actions';
import { DoButton } from './do-button';

interface PlanLateWorkProps {
  readonly seriesId: string;
  readonly late: NonNullable<CuringCoat['late']>;
}

/** Makes the work after a missed recoat window tasks of the plan. */
export function PlanLateWork({ seriesId, late }: PlanLateWorkProps) {
  return <DoButton seriesId={seriesId} word={late.word} run={() => lateWorkAction(seriesId, late.coatTaskId, late.nextTaskId)} />;
}
