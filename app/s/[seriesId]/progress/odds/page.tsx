import type { Metadata } from 'next';
import { notFound } from 'next/navigation';
import { Check, OctagonX, TriangleAlert } from 'lucide-react';
import { EmptyState, LinkButton, PageBody, PageHead, progressPath } from '@/app/_ui';
import { loadDocument, openViewContext, viewProgress, type ForecastView, type ProgressView } from '@/lib/views';
import { RecordLink } from '../../week/record-link';
import { ForecastButton } from '../forecast-button';
import { BankPlot, FinishPlot } from '../plots';
import styles from '../progress.module.css';

interface Props {
  readonly params: Promise<{ seriesId: string }>;
}

export const metadata: Metadata = { title: 'Odds' };

const SIGNS = { good: Check, warn: TriangleAlert, stop: OctagonX, plain: Check };

export default async function OddsPage({ params }: Props) {
  const { seriesId } = await params;
  const document = await loadDocument(seriesId);
  if (document === null) notFound();
  const view = await viewProgress(await openViewContext(), document);
  const { forecast } = view;
  return (
    <PageBody>
      <PageHead title="Odds" lead={forecast === null ? null : `Forecast ${forecast.number} of plan ${forecast.planNumber}, made ${forecast.madeAt}.`} actions={<LinkButton href={progressPath(seriesId)}>Progress</LinkButton>} />
      {forecast === null ? (
        <EmptyState title="No forecast yet" actions={<LinkButton href={progressPath(seriesId)} look="main">Go to progress</LinkButton>}>
          <p>Run a forecast of the accepted plan there.</p>
        </EmptyState>
      ) : (
        <>
          {forecast.staleness ? <p className={styles.stale}>{forecast.staleness}</p> : null}
          <ForecastButton seriesId={seriesId} hasForecast />
          <Finish forecast={forecast} />
          <Episodes forecast={forecast} seriesId={seriesId} />
          <Threats forecast={forecast} seriesId={seriesId} />
          <Bank forecast={forecast} />
          <Calibration view={view} />
          <section className={styles.section} aria-labelledby="assumed-head">
            <h2 id="assumed-head">What is assumed</h2>
            <ul>{forecast.assumptions.map((one) => <li key={one}>{one}</li>)}</ul>
            <p>In a run, on average: {forecast.luck.join(', ')}. {forecast.runs}. {forecast.exactness}</p>
          </section>
        </>
      )}
    </PageBody>
  );
}

function Finish({ forecast }: { readonly forecast: ForecastView }) {
  return (
    <section className={styles.section} aria-labelledby="finish-head">
      <h2 id="finish-head">When the build is done</h2>
      <p>{forecast.beyond}</p>
      <div className={styles.beside}>
        <FinishPlot forecast={forecast} />
        <table className={styles.table}>
          <caption>The date to promise</caption>
          <thead><tr><th scope="col">Sure to</th><th scope="col">Done by</th></tr></thead>
          <tbody>{forecast.promises.map((row) => <tr key={row.confidence}><th scope="row">{row.confidence}</th><td>{row.date}</td></tr>)}</tbody>
        </table>
      </div>
    </section>
  );
}

function Episodes({ forecast, seriesId }: { readonly forecast: ForecastView; readonly seriesId: string }) {
  return (
    <section className={styles.section} aria-labelledby="episodes-head">
      <h2 id="episodes-head">Episodes</h2>
      <div className={styles.scroll}>
        <table className={styles.table}>
          <thead>
            <tr><th scope="col">Episode</th><th scope="col">Release</th><th scope="col">Odds of it</th><th scope="col">Recorded: 10 %</th><th scope="col">50 %</th><th scope="col">80 %</th><th scope="col">Due</th><th scope="col">10 to 80 %</th></tr>
          </thead>
          <tbody>
            {forecast.episodes.map((row) => {
              const Icon = SIGNS[row.tone];
              const { due, p10, p80 } = row.places;
              return (
                <tr key={row.episode.id}>
                  <th scope="row"><RecordLink seriesId={seriesId} to={row.episode}>{row.episode.name}</RecordLink></th>
                  <td>{row.release}</td>
                  <td className={styles[row.tone]}><Icon size={15} aria-hidden /> {row.chance} <span className={styles.soft}>{row.chanceError}</span></td>
                  <td>{row.p10}</td><td>{row.p50}</td><td>{row.p80}</td><td>{row.due}</td>
                  <td className={styles.bars} aria-hidden>
                    {p10 === null ? null : <span className={styles.bar} style={{ insetInlineStart: `${100 * p10}%`, inlineSize: `${Math.max(1, 100 * ((p80 ?? 1) - p10))}%` }} />}
                    <span className={styles.dueLine} style={{ insetInlineStart: `${100 * due}%` }} />
                  </td>
                </tr>
              );
            })}
          </tbody>
        </table>
      </div>
    </section>
  );
}

function Threats({ forecast, seriesId }: { readonly forecast: ForecastView; readonly seriesId: string }) {
  return (
    <section className={styles.section} aria-labelledby="threats-head">
      <h2 id="threats-head">What holds the end up</h2>
      <ul className={`plain ${styles.threats}`}>
        {forecast.threats.map((row) => (
          <li key={`${row.subject.kind} ${row.subject.id}`}>
            <span className={styles.threatBar} style={{ inlineSize: `${100 * row.width}%` }} aria-hidden />
            <span><RecordLink seriesId={seriesId} to={row.subject}>{row.subject.name}</RecordLink> in {row.share} of the runs. {row.worth}</span>
          </li>
        ))}
      </ul>
    </section>
  );
}

function Bank({ forecast }: { readonly forecast: ForecastView }) {
  return (
    <section className={styles.section} aria-labelledby="bank-head">
      <h2 id="bank-head">Episodes in the bank</h2>
      <p>Recorded and not yet released at the end of a week.</p>
      <div className={styles.beside}>
        <BankPlot forecast={forecast} />
        <div className={styles.scroll}>
          <table className={styles.table}>
            <thead><tr><th scope="col">Week</th><th scope="col">10 %</th><th scope="col">50 %</th><th scope="col">90 %</th></tr></thead>
            <tbody>{forecast.bank.map((row) => <tr key={row.week}><th scope="row">{row.week}</th><td>{row.p10}</td><td>{row.p50}</td><td>{row.p90}</td></tr>)}</tbody>
          </table>
        </div>
      </div>
    </section>
  );
}

function Calibration({ view }: { readonly view: ProgressView }) {
  const { facts, rows, verdict } = view.calibration;
  return (
    <section className={styles.section} aria-labelledby="past-head">
      <h2 id="past-head">Past forecasts against what happened</h2>
      <p>{verdict === null ? 'No forecast has come true yet. Each episode that is recorded judges the forecasts made before it.' : `${verdict}`}</p>
      {facts.length === 0 ? null : <dl className={styles.facts}>{facts.map(({ name, value }) => <div key={name}><dt>{name}</dt><dd>{value}</dd></div>)}</dl>}
      {rows.length === 0 ? null : (
        <div className={styles.scroll}>
          <table className={styles.table}>
            <thead><tr><th scope="col">Forecast</th><th scope="col">Episode</th><th scope="col">80 % interval</th><th scope="col">Recorded</th><th scope="col">Inside</th></tr></thead>
            <tbody>{rows.map((row) => <tr key={row.key}><td>{row.forecast}</td><td>{row.episode}</td><td>{row.interval}</td><td>{row.actual}</td><td>{row.isInside ? 'yes' : 'no'}</td></tr>)}</tbody>
          </table>
        </div>
      )}
    </section>
  );
}
