import type { Metadata } from 'next';
import { notFound } from 'next/navigation';
import { Check, X } from 'lucide-react';
import { EmptyState, LinkButton, PageBody, PageHead, progressPath, ScrollRegion } from '@/app/_ui';
import { loadDocument, openViewContext, viewProgress, type CalibrationView } from '@/lib/views';
import styles from '../progress.module.css';

interface Props {
  readonly params: Promise<{ seriesId: string }>;
}

export const metadata: Metadata = { title: 'Past forecasts' };

/** Past forecasts against what happened. */
export default async function CalibrationPage({ params }: Props) {
  const { seriesId } = await params;
  const document = await loadDocument(seriesId);
  if (document === null) notFound();
  const { calibration, forecast } = await viewProgress(await openViewContext(), document);
  return (
    <PageBody>
      <PageHead title="Past forecasts" lead="Each forecast is judged when an episode it spoke of is recorded." actions={<LinkButton href={progressPath(seriesId)}>Progress</LinkButton>} />
      {calibration.verdict === null ? (
        <EmptyState title="No forecast has come true yet" actions={<LinkButton href={progressPath(seriesId)} look="main">{forecast === null ? 'Run a first forecast' : 'Go to progress'}</LinkButton>}>
          <p>Run a forecast now and then. Once all work of an episode is ticked, every forecast made before that is set against the day it happened.</p>
        </EmptyState>
      ) : <Judged calibration={calibration} />}
    </PageBody>
  );
}

function Judged({ calibration: { facts, rows, verdict } }: { readonly calibration: CalibrationView }) {
  return (
    <>
      <section className={styles.section} aria-labelledby="verdict-head">
        <h2 id="verdict-head">{verdict}</h2>
        <dl className={styles.facts}>{facts.map(({ name, value }) => <div key={name}><dt>{name}</dt><dd>{value}</dd></div>)}</dl>
        <p className={styles.soft}>
          Eight in ten should fall inside the 80 % interval: fewer, and the odds are too sure; more, and they are too careful. The pinball loss is a score in days that is
          smallest, on average, for honest odds; compare it with earlier ones of the same series.
        </p>
      </section>
      <section className={styles.section} aria-labelledby="rows-head">
        <h2 id="rows-head">One by one</h2>
        <ScrollRegion className={styles.scroll} label="Past forecasts one by one">
          <table className={`${styles.table} ${styles.cards}`}>
            <thead><tr><th scope="col">Episode</th><th scope="col">Forecast</th><th scope="col">10 to 90 % said</th><th scope="col">Recorded</th><th scope="col">Inside</th><th scope="col">Bar: said, line: happened</th></tr></thead>
            <tbody>{rows.map((row) => <Row key={row.key} row={row} />)}</tbody>
          </table>
        </ScrollRegion>
      </section>
    </>
  );
}

function Row({ row: { actual, episode, forecast, interval, isInside, places } }: { readonly row: CalibrationView['rows'][number] }) {
  const Icon = isInside ? Check : X;
  return (
    <tr>
      <th scope="row">{episode}</th>
      <td data-label="Forecast">{forecast}</td>
      <td data-label="Said">{interval}</td>
      <td data-label="Recorded">{actual}</td>
      <td data-label="Inside" className={isInside ? styles.good : styles.warn}><Icon size={15} aria-hidden /> {isInside ? 'yes' : 'no'}</td>
      <td className={styles.bars} aria-hidden>
        <span className={styles.bar} style={{ insetInlineStart: `${100 * places.from}%`, inlineSize: `${Math.max(1, 100 * ((places.to ?? 1) - places.from))}%` }} />
        <span className={styles.happened} style={{ insetInlineStart: `${100 * places.actual}%` }} />
      </td>
    </tr>
  );
}
