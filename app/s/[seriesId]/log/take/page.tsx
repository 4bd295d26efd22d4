import type { Metadata } from 'next';
import { notFound } from 'next/navigation';
import { LinkButton, newRecordPath, PageBody } from '@/app/_ui';
import { loadDocument, openViewContext, viewLogPhone } from '@/lib/views';
import { LogHead } from '../log-head';
import styles from '../log.module.css';
import { Recorder } from './recorder';

export const metadata: Metadata = { title: 'Log a take' };

export default async function TakePage({ params }: { readonly params: Promise<{ seriesId: string }> }) {
  const { seriesId } = await params;
  const document = await loadDocument(seriesId);
  if (document === null) notFound();
  return (
    <PageBody>
      <LogHead seriesId={seriesId} at="take" title="Log a take" />
      {document.tasks.length > 0 ? null : <p className={styles.remark}>No task is recorded yet, so takes are kept without one. <LinkButton href={newRecordPath(seriesId, 'task')}>Add a task</LinkButton></p>}
      <Recorder view={await viewLogPhone(await openViewContext(), document)} />
    </PageBody>
  );
}
