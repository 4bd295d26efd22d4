'use client';

import type { HeatingView } from '@/lib/views';
import { planHeatingAction } from './actions';
import { DoButton } from './do-button';

interface PlanHeatingProps {
  readonly seriesId: string;
  readonly run: NonNullable<HeatingView['run']>;
}

/** Adds the cheapest heating that is ready in time as a run of its own. */
export function PlanHeating({ seriesId, run }: PlanHeatingProps) {
  return <DoButton seriesId={seriesId} word="Heat like this" run={() => planHeatingAction(seriesId, run)} />;
}
