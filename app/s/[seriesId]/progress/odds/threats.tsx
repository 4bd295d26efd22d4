import { Fold } from '@/app/_ui';
import type { ForecastView } from '@/lib/views';
import { RecordLink } from '../../week/record-link';
import styles from '../progress.module.css';

/** Trades in full; the others hold it up less often. */
const MOST_TRADES = 5;

interface ThreatsProps {
  readonly forecast: ForecastView;
  readonly seriesId: string;
}

/** What holds the end up: work, and the outside trades, with what a saving is worth there. */
export function Threats({ forecast: { threats, trades }, seriesId }: ThreatsProps) {
  return (
    <Fold id="threats-head" title="What holds the end up" className={styles.section}>
      <h3>Work and outside jobs</h3>
      <ul className={`plain ${styles.threats}`}>
        {threats.map((row) => (
          <li key={`${row.subject.kind} ${row.subject.id}`}>
            <span className={styles.threatBar} style={{ inlineSize: `${100 * row.width}%` }} aria-hidden />
            <span><RecordLink seriesId={seriesId} to={row.subject}>{row.subject.name}</RecordLink> in {row.share} of the runs. {row.worth}</span>
          </li>
        ))}
      </ul>
      <h3>Outside trades</h3>
      {trades === null ? <p>This forecast is older than the count by trade. Forecast again to see it.</p> : trades.length === 0 ? <p>No outside job is open.</p> : (
        <ul className={`plain ${styles.threats}`}>
          {trades.slice(0, MOST_TRADES).map((row) => (
            <li key={row.trade.id}>
              <span className={styles.threatBar} style={{ inlineSize: `${100 * row.width}%` }} aria-hidden />
              <span><RecordLink seriesId={seriesId} to={row.trade}>{row.trade.name}</RecordLink>, {row.jobs}: in {row.share} of the runs. {row.worth}</span>
            </li>
          ))}
          {trades.length > MOST_TRADES ? <li>Others, each less often: {trades.slice(MOST_TRADES).map(({ share, trade }) => `${trade.name} ${share}`).join(', ')}.</li> : null}
        </ul>
      )}
    </Fold>
  );
}
