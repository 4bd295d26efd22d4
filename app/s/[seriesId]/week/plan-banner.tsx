import Link from 'next/link';
import { Route, TriangleAlert } from 'lucide-react';
import { plansPath } from '@/app/_ui';
import type { PlanStamp } from '@/lib/views';
import styles from './plan-banner.module.css';

interface PlanBannerProps {
  readonly plan: PlanStamp | null;
  readonly seriesId: string;
  /** Blocks whose session is gone. */
  readonly strayCount?: number;
}

/** What stands between this page and the truth: no plan, a stale one, or a draft that waits. Nothing when all is well. */
export function PlanBanner({ plan, seriesId, strayCount = 0 }: PlanBannerProps) {
  const href = plansPath(seriesId);
  if (plan === null) {
    return (
      <p className={styles.banner}>
        <Route size={20} aria-hidden />
        <span>
          There is no accepted plan yet. <Link href={href}>Make one</Link>.
        </span>
      </p>
    );
  }
  return (
    <>
      {plan.staleness ? (
        <p className={`${styles.banner} ${styles.warn}`}>
          <TriangleAlert size={20} aria-hidden />
          <span>
            {plan.staleness} {strayCount > 0 ? `${strayCount === 1 ? 'One block has' : `${strayCount} blocks have`} lost the session they stood in. ` : ''}
            <Link href={href}>Re-plan</Link>.
          </span>
        </p>
      ) : null}
      {plan.draft === null ? null : (
        <p className={styles.banner}>
          <Route size={20} aria-hidden />
          <span>
            Plan {plan.draft} is a draft and waits for your decision. <Link href={href}>See what it changes</Link>.
          </span>
        </p>
      )}
    </>
  );
}
