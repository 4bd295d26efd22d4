import type { Metadata } from 'next';
import { notFound } from 'next/navigation';
import { calibrationPath, EmptyState, Fold, LinkButton, PageBody, PageHead, progressPath } from '@/app/_ui';
import { loadDocument, openViewContext, viewProgress, type ForecastView } from '@/lib/views';
import { ForecastButton } from '../forecast-button';
import { EpisodeOdds } from './episode-odds';
import { Finish } from './finish';
import { NoPlan } from '../no-plan';
import { BankPlot } from '../plots';
import { Threats } from './threats';
import styles from '../progress.module.css';

interface Props {
  readonly params: Promise<{ seriesId: string }>;
  /** `sure`: a confidence in percent that a date is wanted for. */
  readonly searchParams: Promise<Readonly<Record<string, string | string[] | undefined>>>;
}

export const metadata: Metadata = { title: 'Odds' };

export default async function OddsPage({ params, searchParams }: Props) {
  const [{ seriesId }, { sure }] = await Promise.all([params, searchParams]);
  const document = await loadDocument(seriesId);
  if (document === null) notFound();
  const { calibration, forecast, wanted, ...rest } = await viewProgress(await openViewContext(), document, [sure ?? []].flat()[0] ?? null);
  return (
    <PageBody>
      <PageHead title="Odds" lead={forecast === null ? null : `Forecast ${forecast.number} of plan ${forecast.planNumber}, made ${forecast.madeAt}.`} actions={<LinkButton href={progressPath(seriesId)}>Progress</LinkButton>} />
      {rest.planNumber === null ? <NoPlan view={rest} /> : forecast === null ? (
        <EmptyState title="No forecast yet" actions={<LinkButton href={progressPath(seriesId)} look="main">Go to progress</LinkButton>}>
          <p>Run a forecast of the accepted plan there.</p>
        </EmptyState>
      ) : (
        <>
          {forecast.staleness ? <p className={styles.stale}>{forecast.staleness}</p> : null}
          <ForecastButton seriesId={seriesId} hasForecast />
          <Finish forecast={forecast} wanted={wanted} />
          <EpisodeOdds forecast={forecast} seriesId={seriesId} />
          <Threats forecast={forecast} seriesId={seriesId} />
          <Bank forecast={forecast} />
          <Fold id="assumed-head" title="What is assumed, and how exact it is" className={styles.section}>
            <p>{forecast.runs}. {forecast.exactness}</p>
            <ul>{forecast.assumptions.map((one) => <li key={one}>{one}</li>)}</ul>
            <p>In a run, on average: {forecast.luck.join(', ')}.</p>
          </Fold>
          <p>{calibration.verdict ?? 'No forecast has come true yet.'} <LinkButton look="quiet" href={calibrationPath(seriesId)}>Past forecasts</LinkButton></p>
        </>
      )}
    </PageBody>
  );
}

function Bank({ forecast }: { readonly forecast: ForecastView }) {
  return (
    <Fold id="bank-head" title="Episodes in the bank" className={styles.section}>
      <p>Recorded and not yet released at the end of a week. In eight of ten runs the number lies between the 10 % and the 90 % column.</p>
      <div className={styles.beside}>
        <BankPlot forecast={forecast} />
        <table className={styles.table}>
          <caption>Episodes in the bank, by week</caption>
          <thead><tr><th scope="col">Week</th><th scope="col">10 %</th><th scope="col">50 %</th><th scope="col">90 %</th></tr></thead>
          <tbody>{forecast.bank.map((row) => <tr key={row.week}><th scope="row">{row.week}</th><td>{row.p10}</td><td>{row.p50}</td><td>{row.p90}</td></tr>)}</tbody>
        </table>
      </div>
    </Fold>
  );
}
