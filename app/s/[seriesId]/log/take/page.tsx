import type { Metadata } from 'next';
import { notFound } from 'next/navigation';
import { PageBody } from '@/app/_ui';
import { loadDocument, openViewContext, viewLogPhone } from '@/lib/views';
import { LogHead } from '../log-head';
import { Recorder } from './recorder';

export const metadata: Metadata = { title: 'Log a take' };

export default async function TakePage({ params }: { readonly params: Promise<{ seriesId: string }> }) {
  const { seriesId } = await params;
  const document = await loadDocument(seriesId);
  if (document === null) notFound();
  return (
    <PageBody>
      <LogHead seriesId={seriesId} at="take" title="Log a take" />
      <Recorder view={await viewLogPhone(await openViewContext(), document)} />
    </PageBody>
  );
}
