import type { Metadata } from 'next';
import Link from 'next/link';
import { notFound } from 'next/navigation';
import { EmptyState, Refused, LinkButton, PageBody, PageHead, plansPath, progressPath, whatIfPath } from '@/app/_ui';
import { loadDocument, openViewContext, viewWhatIf, type EffectView, type VariantView, type WhatIfChoice, type WhatIfView } from '@/lib/views';
import { RecordLink } from '../../week/record-link';
import { Decide, DropVariant } from './decide';
import { MovedStrip } from './moved-strip';
import styles from '../progress.module.css';

interface Props {
  readonly params: Promise<{ seriesId: string }>;
  readonly searchParams: Promise<Readonly<Record<string, string | string[] | undefined>>>;
}

export const metadata: Metadata = { title: 'What if' };

const listOf = (value: string | string[] | undefined): readonly string[] => (value === undefined ? [] : typeof value === 'string' ? [value] : value);
const MOST_CHANGES = 10;
/** Others that it could have happened to, shown for the last what-if. */
const MOST_TARGETS = 12;

const pieces = (view: WhatIfView): string[] => view.chosen.map(({ kind, target }) => (target === '' ? kind : `${kind}:${target}`));

export default async function WhatIfPage({ params, searchParams }: Props) {
  const { seriesId } = await params;
  const query = await searchParams;
  const document = await loadDocument(seriesId);
  if (document === null) notFound();
  const view = await viewWhatIf(await openViewContext(), document, { whatIfs: listOf(query.if), remedy: listOf(query.do)[0] ?? null });
  return (
    <PageBody>
      <PageHead title="What if" lead="One tap shows what it does. The accepted plan stays as it is until you accept another." actions={<LinkButton href={progressPath(seriesId)}>Progress</LinkButton>} />
      {view.hasPlan ? (
        <>
          <Choices view={view} />
          <Refused issues={view.issues} seriesId={seriesId} />
          {view.effect === null ? null : <Effect effect={view.effect} view={view} />}
          {view.variants.length === 0 ? null : <Variants variants={view.variants} seriesId={seriesId} compared={listOf(query.compare).map(Number)} />}
        </>
      ) : (
        <EmptyState title="There is no accepted plan yet" actions={<LinkButton href={plansPath(seriesId)} look="main">Make a plan</LinkButton>}>
          <p>A what-if is told against a plan that counts.</p>
        </EmptyState>
      )}
    </PageBody>
  );
}

function Choices({ view }: { readonly view: WhatIfView }) {
  const { chosen, seriesId } = view;
  const last = chosen.at(-1);
  const lastChoice = view.choices.find((choice) => choice.kind === last?.kind);
  const before = pieces(view).slice(0, -1);
  return (
    <section className={styles.section} aria-labelledby="choices-head">
      <h2 id="choices-head">{chosen.length === 0 ? 'What happened?' : 'Something else too?'}</h2>
      <ul className={`plain ${styles.choices}`}>
        {view.choices.map((choice) => <li key={choice.kind}><Choice choice={choice} view={view} /></li>)}
      </ul>
      {last !== undefined && lastChoice !== undefined && lastChoice.targets.length > 1 ? (
        <details>
          <summary>{last.title}: {last.targetName}. Or was it another?</summary>
          <ul className={`plain ${styles.choices}`}>
            {lastChoice.targets.filter((target) => target.id !== last.target).slice(0, MOST_TARGETS).map((target) => (
              <li key={target.id}><LinkButton look="quiet" prefetch={false} href={whatIfPath(seriesId, [...before, `${last.kind}:${target.id}`])}>{target.name}</LinkButton></li>
            ))}
          </ul>
        </details>
      ) : null}
      {chosen.length > 0 ? <p><Link href={whatIfPath(seriesId)} prefetch={false}>Start over</Link></p> : null}
    </section>
  );
}

function Choice({ choice, view }: { readonly choice: WhatIfChoice; readonly view: WhatIfView }) {
  const first = choice.targets[0];
  if (first === undefined) return <span className={styles.cannot}>{choice.title} <span>{choice.nothing}</span></span>;
  const isChosen = view.chosen.some((one) => one.kind === choice.kind);
  const piece = first.id === '' ? choice.kind : `${choice.kind}:${first.id}`;
  return (
    <LinkButton prefetch={false} aria-current={isChosen ? 'true' : undefined} href={whatIfPath(view.seriesId, isChosen ? pieces(view) : [...pieces(view), piece])}>
      {choice.title}{isChosen ? ' (chosen)' : ''}
    </LinkButton>
  );
}

function Effect({ effect, view }: { readonly effect: EffectView; readonly view: WhatIfView }) {
  const { seriesId } = view;
  const shown = effect.changes.slice(0, MOST_CHANGES);
  return (
    <section className={`${styles.section} ${styles.effect}`} aria-labelledby="effect-head">
      <h2 id="effect-head">{effect.words.join('; ')}</h2>
      <dl className={styles.facts}>
        <div><dt>The plan as it is</dt><dd>{effect.before}</dd></div>
        <div className={effect.isWorse ? styles.stop : styles.good}><dt>After this</dt><dd>{effect.after}</dd></div>
        <div><dt>Work</dt><dd>{effect.summary}</dd></div>
      </dl>
      {view.remedy === null ? (
        <>
          <h3>The smallest changes that help</h3>
          {effect.remedies.length === 0 ? <p>{effect.isWorse ? 'None of the small changes helps. Move a release, or plan again by hand.' : 'Nothing is worse than in the plan as it is, so nothing needs to change.'}</p> : (
            <ol className={styles.remedies}>
              {effect.remedies.map((remedy) => (
                <li key={remedy.kind}>
                  <Link href={whatIfPath(seriesId, pieces(view), remedy.kind)} prefetch={false}>{remedy.text}</Link>
                  <span>{remedy.result} {remedy.moves}.</span>
                </li>
              ))}
            </ol>
          )}
        </>
      ) : <p><Link href={whatIfPath(seriesId, pieces(view))} prefetch={false}>See the other changes</Link></p>}
      {effect.episodes.length === 0 ? null : (
        <>
          <h3>Episodes</h3>
          <ul>{effect.episodes.map((row) => <li key={row.episode.id}><RecordLink seriesId={seriesId} to={row.episode}>{row.episode.name}</RecordLink> {row.text}; <span className={row.isLate ? styles.stop : undefined}>{row.outlook}</span></li>)}</ul>
        </>
      )}
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
      <Decide seriesId={seriesId} whatIfs={view.chosen.map(({ kind, target }) => ({ kind, target }))} remedy={view.remedy} />
    </section>
  );
}

function Variants({ compared, seriesId, variants }: { readonly compared: readonly number[]; readonly seriesId: string; readonly variants: readonly VariantView[] }) {
  const two = compared.flatMap((number) => variants.filter((one) => one.number === number)).slice(0, 2);
  const episodes = [...new Map(two.flatMap((one) => one.episodes).map((one) => [one.id, one.name])).entries()];
  return (
    <section className={styles.section} aria-labelledby="variants-head">
      <h2 id="variants-head">Kept variants</h2>
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
        {variants.length > 1 ? <button type="submit" className={styles.compareButton}>Compare two</button> : null}
      </form>
      {two.length < 2 ? null : (
        <div className={styles.scroll}>
          <table className={styles.table}>
            <thead><tr><th scope="col">Recorded</th>{two.map((one) => <th key={one.number} scope="col">{one.name}</th>)}</tr></thead>
            <tbody>
              <tr><th scope="row">In all</th>{two.map((one) => <td key={one.number}>{one.result} {one.summary}</td>)}</tr>
              {episodes.map(([id, name]) => (
                <tr key={id}><th scope="row">{name}</th>{two.map((one) => {
                  const found = one.episodes.find((episode) => episode.id === id);
                  return <td key={one.number} className={found?.isLate ? styles.stop : undefined}>{found?.recorded ?? 'not planned'}{found?.isLate ? ', late' : ''}</td>;
                })}</tr>
              ))}
            </tbody>
          </table>
        </div>
      )}
    </section>
  );
}
