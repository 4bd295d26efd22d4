'use client';

import { useId } from 'react';
import { Button, FieldErrors, UntilReady } from '@/app/_ui';
import { planPickupAction } from '../actions';
import { useLogAction } from '../use-log-action';

/** Makes a pickup a task of the build; the next plan gives it a time. */
export function PlanPickup({ seriesId, pickupKey, what }: { readonly seriesId: string; readonly pickupKey: string; readonly what: string }) {
  const id = useId();
  const { isPending, errors, run } = useLogAction(seriesId);
  return (
    <UntilReady>
      <Button look="main" aria-disabled={isPending} aria-label={`Plan it: ${what}`} onClick={() => run(() => planPickupAction(seriesId, pickupKey))}>Plan it</Button>
      <div role="alert"><FieldErrors id={id} errors={errors} /></div>
    </UntilReady>
  );
}
