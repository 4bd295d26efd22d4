import Link from 'next/link';
import { whatIfPath } from '@/app/_ui';
import type { EffectView, WhatIfView } from '@/lib/views';
import { RecordLink } from '../../week/record-link';
import { piecesOf, Precisely, type PathOf } from './choices';
import { Decide } from './decide';
import { MovedStrip } from './moved-strip';
import styles from '../progress.module.css';

const MOST_CHANGES = 10;

interface EffectProps {
  readonly effect: EffectView;
  readonly view: WhatIfView;
}

/** What it does to releases, bank and work, and up to three small changes against it. */
export function EffectBrief({ effect, pathOf, view }: EffectProps & { readonly pathOf: PathOf }) {
  return (
    <>
      <h2 id="effect-head">{effect.words.join('; ')}</h2>
      <dl className={styles.facts}>
        <div><dt>The plan as it is</dt><dd>{effect.before}</dd></div>
        <div className={effect.isWorse ? styles.stop : styles.good}><dt>After this</dt><dd>{effect.after}</dd></div>
        <div><dt>Work</dt><dd>{effect.summary}</dd></div>
        <div>
          <dt>Episodes in hand</dt>
          <dd>{effect.bank.after}{effect.bank.after === effect.bank.before ? ' As before.' : <span className={styles.soft}> Before: {effect.bank.before}</span>}</dd>
        </div>
      </dl>
      <Precisely view={view} pathOf={pathOf} />
      {view.remedy === null ? <Remedies effect={effect} view={view} /> : <p><Link href={whatIfPath(view.seriesId, piecesOf(view))} prefetch={false}>See the other changes</Link></p>}
    </>
  );
}

function Remedies({ effect, view }: EffectProps) {
  return (
    <>
      <h3>The smallest changes that help</h3>
      {effect.remedies.length === 0 ? <p>{effect.isWorse ? 'None of the small changes helps. Move a release, or plan again by hand.' : 'Nothing is worse than in the plan as it is, so nothing needs to change.'}</p> : (
        <ol className={styles.remedies}>
          {effect.remedies.map((remedy) => (
            <li key={remedy.kind}>
              <Link href={whatIfPath(view.seriesId, piecesOf(view), remedy.kind)} prefetch={false}>{remedy.text}</Link>
              <span>{remedy.result} {remedy.moves}.</span>
            </li>
          ))}
        </ol>
      )}
    </>
  );
}

/** The whole answer, with the strip of what moves and the decision. */
export function Effect({ effect, view }: EffectProps) {
  const { seriesId } = view;
  const shown = effect.changes.slice(0, MOST_CHANGES);
  return (
    <section className={`${styles.section} ${styles.effect}`} aria-labelledby="effect-head">
      <EffectBrief effect={effect} view={view} pathOf={(pieces) => whatIfPath(seriesId, pieces)} />
      <Decide seriesId={seriesId} whatIfs={view.chosen.map(({ kind, target }) => ({ kind, target }))} remedy={view.remedy} />
      {shown.length === 0 ? null : (
        <>
          <h3>What moves</h3>
          {effect.strip === null ? null : <MovedStrip moves={effect.strip} seriesId={seriesId} />}
          <ul>{shown.map((change) => <li key={change.key}><strong>{change.title}</strong> {change.text}</li>)}</ul>
          {effect.changes.length > shown.length ? (
            <details>
              <summary>{effect.changes.length - shown.length} more</summary>
              <ul>{effect.changes.slice(MOST_CHANGES).map((change) => <li key={change.key}><strong>{change.title}</strong> {change.text}</li>)}</ul>
            </details>
          ) : null}
        </>
      )}
      {effect.episodes.length === 0 ? null : (
        <>
          <h3>Episodes</h3>
          <ul>{effect.episodes.map((row) => <li key={row.episode.id}><RecordLink seriesId={seriesId} to={row.episode}>{row.episode.name}</RecordLink> {row.text}; <span className={row.isLate ? styles.stop : undefined}>{row.outlook}</span></li>)}</ul>
        </>
      )}
    </section>
  );
}
