'use client';

import { useId, useState, useTransition } from 'react';
import { Button, FieldErrors, UntilReady, useNotices } from '@/app/_ui';
import { planPickupAction } from '../actions';

/** Makes a pickup a task of the build; the next plan gives it a time. */
export function PlanPickup({ seriesId, pickupKey, what }: { readonly seriesId: string; readonly pickupKey: string; readonly what: string }) {
  const id = useId();
  const notices = useNotices();
  const [errors, setErrors] = useState<readonly string[]>([]);
  const [isPending, start] = useTransition();
  const plan = () => {
    if (isPending) return;
    start(async () => {
      const outcome = await planPickupAction(seriesId, pickupKey);
      if (outcome.ok) notices.sayChange(seriesId, outcome.saved);
      else setErrors(outcome.issues.map(({ message, fix }) => `${message} ${fix}`));
    });
  };
  return (
    <UntilReady>
      <Button look="main" aria-disabled={isPending} aria-label={`Plan it: ${what}`} onClick={plan}>Plan it</Button>
      <div role="alert"><FieldErrors id={id} errors={errors} /></div>
    </UntilReady>
  );
}
