import type { Mark, Timelines as TimelinesData } from '@/lib/views';
import styles from './progress.module.css';

const WORDS: Readonly<Record<Mark['kind'], string>> = { plan: 'plan', ghost: 'earlier plan', likely: '50 %', sure: '80 %', release: 'release', recorded: 'recorded' };

/** A lane of the axis. Each mark has a shape of its own; the list below the lanes says the same in words. */
function Lane({ name, marks, children }: { readonly name: string; readonly marks: readonly Mark[]; readonly children?: React.ReactNode }) {
  return (
    <div className={styles.lane}>
      <span className={styles.laneName}>{name}</span>
      {children}
      {marks.map((mark) => (
        <span key={mark.key} className={`${styles.mark} ${styles[mark.kind] ?? ''} ${mark.tone === 'stop' ? styles.markLate : ''}`} style={{ insetInlineStart: `${100 * mark.at}%` }} title={`${mark.word}, ${mark.when}`} />
      ))}
    </div>
  );
}

/** The build and the series on one axis of time, with the earlier plans as ghosts. */
export function Timelines({ timelines }: { readonly timelines: TimelinesData }) {
  const { build, now, series, span, ticks } = timelines;
  return (
    <figure className={styles.timelines}>
      <div className={styles.axis} aria-hidden>
        {ticks.map((tick) => (
          <span key={tick.label} className={styles.tick} style={{ insetInlineStart: `${100 * tick.at}%` }}>{tick.label}</span>
        ))}
        <span className={styles.today} style={{ insetInlineStart: `${100 * now}%` }}>today</span>
        <Lane name="Build" marks={build}>
          {span === null ? null : <span className={styles.span} style={{ insetInlineStart: `${100 * span.from}%`, inlineSize: `${100 * (span.to - span.from)}%` }} />}
        </Lane>
        <Lane name="Recorded" marks={series.filter((mark) => mark.kind === 'recorded')} />
        <Lane name="Releases" marks={series.filter((mark) => mark.kind === 'release')} />
      </div>
      <figcaption>
        <ul className={`plain ${styles.legend}`}>
          {[...new Set([...build, ...series].map((mark) => mark.kind))].map((kind) => (
            <li key={kind}><span className={`${styles.sample} ${styles[kind] ?? ''}`} /> {WORDS[kind]}</li>
          ))}
          <li>red with a line through it: late</li>
        </ul>
        <details>
          <summary>The same as a list</summary>
          <ul>
            {[...build, ...series].map((mark) => <li key={mark.key}>{mark.word}: {mark.when}{mark.tone === 'stop' ? ', late' : ''}</li>)}
          </ul>
        </details>
      </figcaption>
    </figure>
  );
}
