import type { Metadata } from 'next';
import { notFound } from 'next/navigation';
import { calibrationPath, Fold, LinkButton, oddsPath, PageBody, PageHead, reviewPath, whatIfPath } from '@/app/_ui';
import { loadDocument, openViewContext, viewProgress, type ProgressView } from '@/lib/views';
import { Answers } from './answers';
import { ForecastButton } from './forecast-button';
import { NoPlan } from './no-plan';
import { Timelines } from './timelines';
import styles from './progress.module.css';

interface Props {
  readonly params: Promise<{ seriesId: string }>;
}

export const metadata: Metadata = { title: 'Progress' };

export default async function ProgressPage({ params }: Props) {
  const { seriesId } = await params;
  const document = await loadDocument(seriesId);
  if (document === null) notFound();
  const view = await viewProgress(await openViewContext(), document);
  return (
    <PageBody>
      <PageHead
        title="Progress"
        lead={view.forecast === null ? 'Build and series on one axis. A forecast adds the odds.' : `Forecast ${view.forecast.number} of plan ${view.forecast.planNumber}, made ${view.forecast.madeAt}.`}
        actions={view.planNumber === null ? null : (
          <>
            <LinkButton href={whatIfPath(seriesId)}>What if…</LinkButton>
            {view.forecast === null ? null : <LinkButton href={oddsPath(seriesId)}>All odds</LinkButton>}
            <LinkButton href={reviewPath(seriesId)}>Weekly review</LinkButton>
            <LinkButton href={calibrationPath(seriesId)}>Past forecasts</LinkButton>
          </>
        )}
      />
      {view.planNumber === null ? <NoPlan view={view} /> : <Standing view={view} />}
    </PageBody>
  );
}

function Standing({ view }: { readonly view: ProgressView }) {
  const { forecast, parts, seriesId } = view;
  return (
    <>
      <Answers answers={view.answers} seriesId={seriesId} />
      {forecast?.staleness ? <p className={styles.stale}>{forecast.staleness} Forecast again for odds of today.</p> : null}
      <ForecastButton seriesId={seriesId} hasForecast={forecast !== null} />
      {view.timelines === null ? null : (
        <Fold id="lines-head" title="Build and series on one axis" className={styles.section}>
          <Timelines timelines={view.timelines} />
        </Fold>
      )}
      <div className={styles.columns}>
        <Fold id="parts-head" title="Parts" className={styles.section}>
          <dl className={styles.facts}>
            <div><dt>Done</dt><dd>{parts.done.length} of {parts.total}</dd></div>
            <div><dt>Away</dt><dd>{parts.away.length === 0 ? 'none' : parts.away.join(', ')}</dd></div>
            <div><dt>Drying</dt><dd>{parts.drying.length === 0 ? 'none' : parts.drying.join(', ')}</dd></div>
            <div><dt>With work left</dt><dd>{parts.open} of {parts.total}</dd></div>
          </dl>
        </Fold>
        <Fold id="pace-head" title="Pace" className={styles.section}>
          <p>{view.earned.words}</p>
          <dl className={styles.facts}>
            {view.earned.facts.map(({ name, value }) => <div key={name}><dt>{name}</dt><dd>{value}</dd></div>)}
          </dl>
        </Fold>
      </div>
      {view.ghosts.length === 0 ? null : (
        <Fold id="ghosts-head" title="Earlier plans" className={styles.section}>
          <ul>
            {view.ghosts.map((ghost) => <li key={ghost.number}>Plan {ghost.number}, made {ghost.made}, was to end {ghost.finish}.</li>)}
          </ul>
        </Fold>
      )}
    </>
  );
}
