import type { Metadata } from 'next';
import Link from 'next/link';
import { notFound } from 'next/navigation';
import { kindPath, PageBody, PageHead } from '@/app/_ui';
import { loadDocument, openViewContext, viewRepeatForm } from '@/lib/views';
import { MissingFirst } from '../../_list/missing-first';
import { RepeatSessions } from './repeat-sessions';

export const metadata: Metadata = { title: 'Repeat a session weekly' };

export default async function RepeatPage({ params }: { params: Promise<{ seriesId: string }> }) {
  const { seriesId } = await params;
  const document = await loadDocument(seriesId);
  if (document === null) notFound();
  const { now } = await openViewContext();
  const view = viewRepeatForm(document, now);
  return (
    <PageBody>
      <PageHead
        title="Repeat a session weekly"
        lead="All of them are made in one change, which can be undone in one go."
        above={<Link href={kindPath(seriesId, 'session')}>Sessions</Link>}
      />
      {view.missing.length > 0 ? <MissingFirst seriesId={seriesId} missing={view.missing} /> : <RepeatSessions view={view} />}
    </PageBody>
  );
}
