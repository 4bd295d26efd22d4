import { Check, OctagonX, TriangleAlert } from 'lucide-react';
import { Fold, ScrollRegion } from '@/app/_ui';
import type { ForecastView } from '@/lib/views';
import { RecordLink } from '../../week/record-link';
import styles from '../progress.module.css';

const SIGNS = { good: Check, warn: TriangleAlert, stop: OctagonX, plain: Check };

interface EpisodeOddsProps {
  readonly forecast: ForecastView;
  readonly seriesId: string;
}

/** When each episode is recorded, and how likely its release date is. */
export function EpisodeOdds({ forecast, seriesId }: EpisodeOddsProps) {
  return (
    <Fold id="episodes-head" title="Episodes" className={styles.section}>
      <ScrollRegion className={styles.scroll} label="Odds of each episode">
        <table className={`${styles.table} ${styles.cards}`}>
          <thead>
            <tr><th scope="col">Episode</th><th scope="col">Release</th><th scope="col">Odds of it</th><th scope="col">Recorded: 10 %</th><th scope="col">50 %</th><th scope="col">80 %</th><th scope="col">Due</th><th scope="col">Bar: 10 to 80 %, line: due</th></tr>
          </thead>
          <tbody>{forecast.episodes.map((row) => <Row key={row.episode.id} row={row} seriesId={seriesId} />)}</tbody>
        </table>
      </ScrollRegion>
    </Fold>
  );
}

function Row({ row, seriesId }: { readonly row: ForecastView['episodes'][number]; readonly seriesId: string }) {
  const Icon = SIGNS[row.tone];
  const { due, p10, p80 } = row.places;
  return (
    <tr>
      <th scope="row"><RecordLink seriesId={seriesId} to={row.episode}>{row.episode.name}</RecordLink></th>
      <td data-label="Release">{row.release}</td>
      <td data-label="Odds of it" className={styles[row.tone]}><Icon size={15} aria-hidden /> {row.chance} <span className={styles.soft}>{row.chanceError}</span></td>
      <td data-label="Recorded: 10 %">{row.p10}</td>
      <td data-label="50 %">{row.p50}</td>
      <td data-label="80 %">{row.p80}</td>
      <td data-label="Due">{row.due}</td>
      <td className={styles.bars} aria-hidden>
        {p10 === null ? null : <span className={styles.bar} style={{ insetInlineStart: `${100 * p10}%`, inlineSize: `${Math.max(1, 100 * ((p80 ?? 1) - p10))}%` }} />}
        <span className={styles.dueLine} style={{ insetInlineStart: `${100 * due}%` }} />
      </td>
    </tr>
  );
}
