import type { Metadata } from 'next';
import Link from 'next/link';
import { notFound } from 'next/navigation';
import { EmptyState, kindPath, LinkButton, newRecordPath, PageBody, PageHead } from '@/app/_ui';
import { loadDocument, viewLaying } from '@/lib/views';
import { LayForm } from './lay-form';

interface Props {
  readonly params: Promise<{ seriesId: string }>;
}

export const metadata: Metadata = { title: 'Lay a coating system' };

export default async function LayPage({ params }: Props) {
  const { seriesId } = await params;
  const document = await loadDocument(seriesId);
  if (document === null) notFound();
  const view = viewLaying(document);
  const isReady = view.systems.length > 0 && view.states.length > 0 && view.places.length > 0;
  return (
    <PageBody>
      <PageHead
        title="Lay a coating system"
        lead="Makes a state of the part and a task for each coat and each abrasion. Their waits follow from the materials and the climate."
        above={<Link href={kindPath(seriesId, 'coatingSystem')}>Coating systems</Link>}
      />
      {isReady ? <LayForm seriesId={seriesId} view={view} /> : (
        <EmptyState title="Something is missing" actions={<LinkButton href={newRecordPath(seriesId, view.systems.length === 0 ? 'coatingSystem' : view.states.length === 0 ? 'part' : 'place')} look="main">Add it</LinkButton>}>
          <p>A system can be laid once there is a coating system, a part with a state, and a place.</p>
        </EmptyState>
      )}
    </PageBody>
  );
}
