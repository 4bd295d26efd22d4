import type { Metadata } from 'next';
import Link from 'next/link';
import { notFound } from 'next/navigation';
import { CircleCheck, Clock, OctagonX, TriangleAlert } from 'lucide-react';
import { EmptyState, LinkButton, newRecordPath, PageBody, recordPath } from '@/app/_ui';
import { loadDocument, openViewContext, viewPromises } from '@/lib/views';
import { LogHead } from '../log-head';
import styles from '../log.module.css';

export const metadata: Metadata = { title: 'Promises' };

const SIGNS = { open: { icon: Clock, word: 'Open' }, overdue: { icon: TriangleAlert, word: 'Overdue' }, broken: { icon: OctagonX, word: 'Open at the end' }, closed: { icon: CircleCheck, word: '' } } as const;

export default async function PromisesPage({ params }: { readonly params: Promise<{ seriesId: string }> }) {
  const { seriesId } = await params;
  const document = await loadDocument(seriesId);
  if (document === null) notFound();
  const { promises } = viewPromises(await openViewContext(), document);
  const add = <LinkButton look="main" href={newRecordPath(seriesId, 'promise')}>Add a promise</LinkButton>;
  return (
    <PageBody>
      <LogHead seriesId={seriesId} at="promises" title="Promises on camera" lead="What viewers were told would come. Each is kept, replaced with a reason, or withdrawn on screen." />
      {promises.length === 0 ? <EmptyState title="Nothing has been promised yet" actions={add}><p>Add a promise the moment it is spoken to camera.</p></EmptyState> : (
        <>
          <p className={styles.remark}>{add}</p>
          <ul className={styles.entries}>
            {promises.map((promise) => {
              const { icon: Icon, word } = SIGNS[promise.standing];
              return (
                <li key={promise.id} className={styles.promise} data-standing={promise.standing}>
                  <p className={styles.sign}><Icon size={20} aria-hidden /> {word || promise.closure}</p>
                  <div className={styles.words}>
                    <h2 className={styles.entryTitle}><Link href={recordPath(seriesId, 'promise', promise.id) ?? ''}>“{promise.words}”</Link></h2>
                    <p>Said {promise.said}. Due {promise.due}.</p>
                    {promise.reason === '' ? null : <p>{promise.reason}</p>}
                  </div>
                </li>
              );
            })}
          </ul>
        </>
      )}
    </PageBody>
  );
}
