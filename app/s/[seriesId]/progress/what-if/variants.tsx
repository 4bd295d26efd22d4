import type { VariantView } from '@/lib/views';
import { DropVariant } from './decide';
import styles from '../progress.module.css';

interface VariantsProps {
  readonly seriesId: string;
  readonly variants: readonly VariantView[];
  /** Numbers of those ticked. */
  readonly compared: readonly number[];
}

/** What was kept under a name, and two of them side by side. */
export function Variants({ compared, seriesId, variants }: VariantsProps) {
  const ticked = compared.flatMap((number) => variants.filter((one) => one.number === number));
  return (
    <section className={styles.section} aria-labelledby="variants-head">
      <h2 id="variants-head">Kept variants</h2>
      {ticked.length === 2 ? <SideBySide two={[ticked[0]!, ticked[1]!]} /> : null}
      <form className={styles.compare} action="">
        <ul className="plain">
          {variants.map((one) => (
            <li key={one.number}>
              <label><input type="checkbox" name="compare" value={one.number} defaultChecked={compared.includes(one.number)} /> <strong>{one.name}</strong></label>
              <span>{one.words.join('; ')}. {one.result} From plan {one.planNumber}, {one.madeAt}.</span>
              <DropVariant seriesId={seriesId} number={one.number} name={one.name} />
            </li>
          ))}
        </ul>
        {variants.length > 1 ? <button type="submit" className={styles.compareButton}>Compare two</button> : <p className={styles.soft}>Keep a second one to set them side by side.</p>}
      </form>
      {compared.length > 0 && ticked.length !== 2 ? <output className={styles.stale}>Two are set side by side, and {ticked.length === 1 ? 'one is' : `${ticked.length} are`} ticked. Tick two, then press Compare two.</output> : null}
    </section>
  );
}

/** Two variants in a table: first what differs. */
function SideBySide({ two }: { readonly two: readonly [VariantView, VariantView] }) {
  const [first, second] = two;
  const names = new Map(two.flatMap((one) => one.episodes).map((one) => [one.id, one.name]));
  const rows = [...names].map(([id, name]) => ({ id, name, both: two.map((one) => one.episodes.find((episode) => episode.id === id)) }));
  const other = rows.filter(({ both }) => both[0]?.recorded !== both[1]?.recorded);
  const same = rows.length - other.length;
  return (
    <>
      <h3>{first.name} against {second.name}</h3>
      <div className={styles.scroll}>
        <table className={styles.table}>
          <thead><tr><th scope="col">Against the plan that counted</th>{two.map((one) => <th key={one.number} scope="col">{one.name}</th>)}</tr></thead>
          <tbody>
            <tr><th scope="row">What happened</th>{two.map((one) => <td key={one.number}>{one.words.join('; ')}</td>)}</tr>
            <tr><th scope="row">Releases</th>{two.map((one) => <td key={one.number}>{one.result}</td>)}</tr>
            <tr><th scope="row">Episodes in hand</th>{two.map((one) => <td key={one.number}>{one.bank}</td>)}</tr>
            <tr><th scope="row">Work that moves</th>{two.map((one) => <td key={one.number}>{one.summary}</td>)}</tr>
            {other.map(({ both, id, name }) => (
              <tr key={id}><th scope="row">{name} recorded</th>{both.map((found, k) => (
                <td key={two[k]!.number} className={found?.isLate ? styles.stop : undefined}>{found?.recorded ?? 'not planned'}{found?.isLate ? ', late' : ''}</td>
              ))}</tr>
            ))}
          </tbody>
        </table>
      </div>
      {same > 0 ? <p className={styles.soft}>{same === 1 ? 'One episode is' : `${same} episodes are`} recorded at the same time in both.</p> : null}
    </>
  );
}
