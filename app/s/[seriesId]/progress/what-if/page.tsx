import type { Metadata } from 'next';
import { notFound } from 'next/navigation';
import { EmptyState, LinkButton, PageBody, PageHead, plansPath, progressPath, Refused, whatIfPath } from '@/app/_ui';
import { loadDocument, openViewContext, viewWhatIf } from '@/lib/views';
import { Choices, Precisely } from './choices';
import { Effect } from './effect';
import { Variants } from './variants';
import styles from '../progress.module.css';

interface Props {
  readonly params: Promise<{ seriesId: string }>;
  readonly searchParams: Promise<Readonly<Record<string, string | string[] | undefined>>>;
}

export const metadata: Metadata = { title: 'What if' };

const listOf = (value: string | string[] | undefined): readonly string[] => (value === undefined ? [] : typeof value === 'string' ? [value] : value);

export default async function WhatIfPage({ params, searchParams }: Props) {
  const { seriesId } = await params;
  const query = await searchParams;
  const document = await loadDocument(seriesId);
  if (document === null) notFound();
  const view = await viewWhatIf(await openViewContext(), document, { whatIfs: listOf(query.if), remedy: listOf(query.do)[0] ?? null });
  const pathOf = (pieces: readonly string[]) => whatIfPath(seriesId, pieces);
  const compared = listOf(query.compare).map(Number);
  const variants = view.variants.length === 0 ? null : <Variants variants={view.variants} seriesId={seriesId} compared={compared} />;
  return (
    <PageBody>
      <PageHead title="What if" lead="One tap shows what it does. The accepted plan stays as it is until you accept another." actions={<LinkButton href={progressPath(seriesId)}>Progress</LinkButton>} />
      {view.hasPlan ? (
        <>
          <Refused issues={view.issues} seriesId={seriesId} />
          {view.effect === null ? <Precisely view={view} pathOf={pathOf} /> : <Effect effect={view.effect} view={view} />}
          {compared.length > 0 ? variants : null}
          <section className={styles.section} aria-labelledby="choices-head">
            <h2 id="choices-head">{view.chosen.length === 0 ? 'What happened?' : 'Something else too?'}</h2>
            <Choices view={view} pathOf={pathOf} />
          </section>
          {compared.length > 0 ? null : variants}
        </>
      ) : (
        <EmptyState title="There is no accepted plan yet" actions={<LinkButton href={plansPath(seriesId)} look="main">Make a plan</LinkButton>}>
          <p>A what-if is told against a plan that counts.</p>
        </EmptyState>
      )}
    </PageBody>
  );
}
