import type { Metadata } from 'next';
import Link from 'next/link';
import { notFound } from 'next/navigation';
import { EmptyState, LinkButton, logPath, PageBody, recordPath } from '@/app/_ui';
import { loadDocument, openViewContext, viewPickups } from '@/lib/views';
import { LogHead } from '../log-head';
import styles from '../log.module.css';
import { PlanPickup } from './plan-pickup';

export const metadata: Metadata = { title: 'Pickups' };

export default async function PickupsPage({ params }: { readonly params: Promise<{ seriesId: string }> }) {
  const { seriesId } = await params;
  const document = await loadDocument(seriesId);
  if (document === null) notFound();
  const pickups = await viewPickups(await openViewContext(), document);
  return (
    <PageBody>
      <LogHead seriesId={seriesId} at="pickups" title="Pickups" lead="Pictures that are missing, and the sessions in which their parts look right." />
      {pickups.length === 0 ? (
        <EmptyState title="No picture is missing" actions={<LinkButton look="main" href={`${logPath(seriesId)}/take`} prefetch={false}>Log a take</LinkButton>}>
          <p>Log takes while you film. Shots whose takes all failed, and the wide, close and result pictures that done work lacks, then stand here with the sessions for them.</p>
        </EmptyState>
      ) : (
        <ul className={styles.entries}>
          {pickups.map((pickup) => (
            <li key={pickup.key} className={styles.pickup}>
              <div className={styles.words}>
                <h2 className={styles.entryTitle}>{pickup.what}</h2>
                <p>Why: {pickup.why}. For <Link href={recordPath(seriesId, 'task', pickup.task.id) ?? ''}>{pickup.task.name}</Link>.</p>
                {pickup.parts.length === 0 ? null : <p>Needs: {pickup.parts.join(', ')}.</p>}
                {pickup.sessions.length === 0 ? <p>{pickup.whyNone}</p> : (
                  <ul className={styles.lines} aria-label="Sessions for it">
                    {pickup.sessions.map(({ id, words }) => <li key={id}>{words}</li>)}
                    {pickup.moreSessions > 0 ? <li>and {pickup.moreSessions} more</li> : null}
                  </ul>
                )}
              </div>
              {pickup.sessions.length === 0 ? null : <PlanPickup seriesId={seriesId} pickupKey={pickup.key} what={pickup.what} />}
            </li>
          ))}
        </ul>
      )}
    </PageBody>
  );
}
