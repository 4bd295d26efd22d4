import { notFound, redirect } from 'next/navigation';
import { weekPath } from '@/app/_ui';
import { loadDocument, openViewContext, viewSeriesFrame } from '@/lib/views';

/** A series opens at its current week. */
export default async function SeriesPage({ params }: { params: Promise<{ seriesId: string }> }) {
  const { seriesId } = await params;
  const document = await loadDocument(seriesId);
  if (document === null) notFound();
  const { now } = await openViewContext();
  redirect(weekPath(seriesId, viewSeriesFrame(document, now).week));
}
