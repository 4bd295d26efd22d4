'use client';

import { ActionButton } from '@/app/_actions/action-button';
import type { HeatingView } from '@/lib/views';
import { planHeatingAction } from './actions';

interface PlanHeatingProps {
  readonly seriesId: string;
  readonly run: NonNullable<HeatingView['run']>;
}

/** Adds the cheapest heating that is ready in time as a run of its own. */
export function PlanHeating({ seriesId, run }: PlanHeatingProps) {
  return <ActionButton seriesId={seriesId} look="main" run={() => planHeatingAction(seriesId, run)}>Heat like this</ActionButton>;
}
