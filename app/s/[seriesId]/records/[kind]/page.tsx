import type { Metadata } from 'next';
import Link from 'next/link';
import { notFound } from 'next/navigation';
import {
  climatePath, EmptyState, findKind, layingPath, LinkButton, materialLibraryPath, newRecordPath, PageBody, PageHead, recordsPath, repeatSessionsPath, tradeLibraryPath, hazardsPath,
} from '@/app/_ui';
import { checkDocument, loadDocument, viewRecordList, wordsOfKind } from '@/lib/views';
import { RecordList } from '../_list/record-list';

interface KindPageProps {
  readonly params: Promise<{ seriesId: string; kind: string }>;
}

export async function generateMetadata({ params }: KindPageProps): Promise<Metadata> {
  const kind = findKind((await params).kind);
  return { title: kind === null ? 'No such list' : wordsOfKind(kind).plural };
}

export default async function KindPage({ params }: KindPageProps) {
  const { seriesId, kind: slug } = await params;
  const kind = findKind(slug);
  const document = await loadDocument(seriesId);
  if (kind === null || document === null) notFound();
  const { words, rows } = viewRecordList(document, kind, checkDocument(document));
  const add = (
    <>
      {kind === 'session' ? <LinkButton href={repeatSessionsPath(seriesId)}>Repeat weekly</LinkButton> : null}
      {kind === 'material' ? <LinkButton href={materialLibraryPath(seriesId)}>Copy from the library</LinkButton> : null}
      {kind === 'trade' && rows.length > 0 ? <LinkButton href={tradeLibraryPath(seriesId)}>Habits and holidays</LinkButton> : null}
      {kind === 'hazard' ? <LinkButton href={hazardsPath(seriesId)}>Copy from the library</LinkButton> : null}
      {kind === 'coatingSystem' && rows.length > 0 ? <LinkButton href={layingPath(seriesId)}>Lay on a part</LinkButton> : null}
      {kind === 'readings' ? <LinkButton look="main" href={climatePath(seriesId)}>Import on the Climate page</LinkButton> : (
        <LinkButton look="main" href={newRecordPath(seriesId, kind)}>
          Add {words.one}
        </LinkButton>
      )}
    </>
  );
  return (
    <PageBody>
      <PageHead title={words.plural} lead={words.purpose} above={<Link href={recordsPath(seriesId)}>All records</Link>} actions={rows.length > 0 ? add : null} />
      {rows.length === 0 ? (
        <EmptyState title={`No ${words.plural.toLowerCase()} yet`} actions={add}>
          <p>{words.whenNone}</p>
        </EmptyState>
      ) : (
        <RecordList seriesId={seriesId} words={words} rows={rows} />
      )}
    </PageBody>
  );
}
