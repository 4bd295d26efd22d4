import type { Metadata } from 'next';
import { notFound } from 'next/navigation';
import type { ReactNode } from 'react';
import { SeriesBand } from '@/app/_ui';
import { loadDocument, openViewContext, viewSeriesFrame } from '@/lib/views';

interface SeriesLayoutProps {
  readonly children: ReactNode;
  readonly params: Promise<{ seriesId: string }>;
}

export async function generateMetadata({ params }: SeriesLayoutProps): Promise<Metadata> {
  const document = await loadDocument((await params).seriesId);
  const name = document?.series.name ?? 'No such series';
  return { title: { default: name, template: `%s · ${name} · Benchtake` } };
}

export default async function SeriesLayout({ children, params }: SeriesLayoutProps) {
  const { seriesId } = await params;
  const document = await loadDocument(seriesId);
  if (document === null) notFound();
  const { now } = await openViewContext();
  const { name, week } = viewSeriesFrame(document, now);
  return (
    <>
      <SeriesBand seriesId={seriesId} seriesName={name} week={week} />
      {children}
    </>
  );
}
