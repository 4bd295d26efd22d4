import { FieldErrors } from '@/app/_ui';
import type { ForecastView, ProgressView } from '@/lib/views';
import { FinishPlot } from '../plots';
import styles from '../progress.module.css';

interface FinishProps {
  readonly forecast: ForecastView;
  readonly wanted: ProgressView['wanted'];
}

/** When the build is done: the curve, the dates to promise, and one for a confidence of one's own. */
export function Finish({ forecast, wanted }: FinishProps) {
  return (
    <section className={styles.section} aria-labelledby="finish-head">
      <h2 id="finish-head">When the build is done</h2>
      <dl className={styles.facts}>
        <div><dt>10 % sure by</dt><dd>{forecast.finish.p10}</dd></div>
        <div><dt>50 % sure by</dt><dd>{forecast.finish.p50}</dd></div>
        <div><dt>80 % sure by</dt><dd className={styles.large}>{forecast.finish.p80}</dd></div>
      </dl>
      <p>{forecast.beyond}</p>
      <div className={styles.beside}>
        <FinishPlot forecast={forecast} />
        <table className={styles.table}>
          <caption>The date to promise</caption>
          <thead><tr><th scope="col">Sure to</th><th scope="col">Done by</th></tr></thead>
          <tbody>{forecast.promises.map((row) => <tr key={row.confidence}><th scope="row">{row.confidence}</th><td>{row.date}</td></tr>)}</tbody>
        </table>
      </div>
      <form className={styles.wanted} action="">
        <label htmlFor="sure">The date for another confidence</label>
        <span><input id="sure" name="sure" inputMode="decimal" defaultValue={wanted?.typed ?? ''} aria-invalid={wanted?.issue ? true : undefined} aria-describedby={wanted?.issue ? 'sure-error' : undefined} /> %</span>
        <button type="submit" className={styles.compareButton}>Tell the date</button>
        {wanted?.answer ? <output>{wanted.answer}</output> : null}
        <FieldErrors id="sure" errors={wanted?.issue ? [`${wanted.issue.message} ${wanted.issue.fix}`] : []} />
      </form>
    </section>
  );
}
