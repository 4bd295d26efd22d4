import type { Metadata } from 'next';
import Link from 'next/link';
import { EmptyState, HomeBand, PageBody, PageHead, seriesPath } from '@/app/_ui';
import { openViewContext, viewNewSeriesForm, viewSeriesList, type SeriesRow } from '@/lib/views';
import { CreateSeries } from './_home/create-series';
import { RemoveSeries } from './_home/remove-series';
import styles from './_home/home.module.css';

export const metadata: Metadata = { title: { absolute: 'Series · Benchtake' } };

export default async function HomePage() {
  const context = await openViewContext();
  const series = await viewSeriesList(context);
  const form = viewNewSeriesForm(context.zone);
  return (
    <>
      <HomeBand />
      <PageBody>
        <PageHead title="Series" lead="A series is one build and the episodes that come out of it." />
        {series.length === 0 ? (
          <div className={styles.start}>
            <EmptyState title="No series yet">
              <p>Start one below. Then record the places, the people, the sessions and the work, and ask for a plan of next week.</p>
            </EmptyState>
            <CreateSeries view={form} />
          </div>
        ) : (
          <>
            <SeriesList series={series} />
            <details>
              <summary className={styles.fold}>Start another series</summary>
              <CreateSeries view={form} />
            </details>
          </>
        )}
      </PageBody>
    </>
  );
}

function SeriesList({ series }: { series: readonly SeriesRow[] }) {
  return (
    <ul className={styles.list}>
      {series.map(({ id, name, changeNumber, lastPlan, isPlanStale }) => (
        <li key={id} className={styles.row}>
          <div>
            <Link href={seriesPath(id)} className={styles.name}>
              {name}
            </Link>
            <p className={styles.facts}>
              <span>{lastPlan ?? 'no plan yet'}</span>
              {isPlanStale ? <span>made before the last change</span> : null}
              <span className="figures">change {changeNumber}</span>
            </p>
          </div>
          <RemoveSeries seriesId={id} name={name} />
        </li>
      ))}
    </ul>
  );
}
