'use client';

import { useRouter } from 'next/navigation';
import { useState, useTransition } from 'react';
import { Wrench } from 'lucide-react';
import { Button, Refused, plansPath } from '@/app/_ui';
import type { Issue } from '@/lib/result';
import { mendPlanAction } from '../plans/actions';

/** Drafts the mend and shows what it changes. The accepted plan stays. */
export function MendButton({ seriesId }: { readonly seriesId: string }) {
  const router = useRouter();
  const [issues, setIssues] = useState<readonly Issue[]>([]);
  const [isPending, start] = useTransition();
  const mend = () => {
    if (isPending) return;
    start(async () => {
      const outcome = await mendPlanAction(seriesId);
      setIssues(outcome.issues);
      if (outcome.issues.length === 0) router.push(plansPath(seriesId));
    });
  };
  return (
    <>
      <Button aria-disabled={isPending} onClick={mend}><Wrench size={18} aria-hidden /> {isPending ? 'Working…' : 'Draft the mended plan'}</Button>
      <Refused issues={issues} seriesId={seriesId} />
    </>
  );
}
