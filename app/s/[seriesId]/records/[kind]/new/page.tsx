import type { Metadata } from 'next';
import Link from 'next/link';
import { notFound, redirect } from 'next/navigation';
import { climatePath, findKind, kindPath, PageBody, PageHead } from '@/app/_ui';
import { RecordForm } from '@/app/_record-form';
import { loadDocument, openViewContext, viewCopyForm, viewNewRecordForm, wordsOfKind } from '@/lib/views';
import { MissingFirst } from '../../_list/missing-first';

interface NewRecordPageProps {
  readonly params: Promise<{ seriesId: string; kind: string }>;
  readonly searchParams: Promise<{ like?: string | string[] }>;
}

export async function generateMetadata({ params }: NewRecordPageProps): Promise<Metadata> {
  const kind = findKind((await params).kind);
  return { title: kind === null ? 'No such list' : `New ${wordsOfKind(kind).one}` };
}

export default async function NewRecordPage({ params, searchParams }: NewRecordPageProps) {
  const { seriesId, kind: slug } = await params;
  const { like } = await searchParams;
  const kind = findKind(slug);
  const document = await loadDocument(seriesId);
  if (kind === null || document === null) notFound();
  // Readings come from a logger's file, not from a form.
  if (kind === 'readings') redirect(climatePath(seriesId));
  const { now } = await openViewContext();
  const words = wordsOfKind(kind);
  const copy = typeof like === 'string' ? viewCopyForm(document, kind, like) : null;
  const view = copy ?? viewNewRecordForm(document, kind, now);
  return (
    <PageBody>
      <PageHead
        title={copy === null ? `New ${words.one}` : `New ${words.one}, like ${copy.name}`}
        above={<Link href={kindPath(seriesId, kind)}>{words.plural}</Link>}
      />
      {view.missing.length > 0 ? <MissingFirst seriesId={seriesId} missing={view.missing} /> : <RecordForm view={view} one={words.one} />}
    </PageBody>
  );
}
