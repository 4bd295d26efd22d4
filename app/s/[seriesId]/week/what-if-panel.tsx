import { Suspense } from 'react';
import { LinkButton, Refused, weekPath, whatIfPath } from '@/app/_ui';
import { loadDocument, openViewContext, viewWhatIf } from '@/lib/views';
import { Choices, piecesOf, Precisely, type PathOf } from '../progress/what-if/choices';
import { EffectBrief } from '../progress/what-if/effect';
import styles from '../progress/progress.module.css';

interface WhatIfPanelProps {
  readonly seriesId: string;
  readonly week: string;
  /** `kind:target` pieces from the address. */
  readonly happened: readonly string[];
}

/** The ten what-ifs beside the week: a tap answers here, and the whole answer is one link away. Nothing is saved. */
export function WhatIfPanel(props: WhatIfPanelProps) {
  return (
    <section id="what-if" className={styles.section} aria-label="What if this week breaks?">
      <Suspense key={props.happened.join()} fallback={<output>Working out what it does…</output>}>
        <Answer {...props} />
      </Suspense>
    </section>
  );
}

async function Answer({ happened, seriesId, week }: WhatIfPanelProps) {
  const document = await loadDocument(seriesId);
  if (document === null) return null;
  const view = await viewWhatIf(await openViewContext(), document, { whatIfs: happened, remedy: null });
  const pathOf: PathOf = (pieces) => `${weekPath(seriesId, week)}${pieces.length === 0 ? '' : `?${new URLSearchParams(pieces.map((piece) => ['if', piece])).toString()}`}#what-if`;
  return (
    <>
      {view.effect === null ? <><h2>What if this week breaks?</h2><Refused issues={view.issues} seriesId={seriesId} />{view.issues.length === 0 ? null : <Precisely view={view} pathOf={pathOf} />}</> : (
        <div className={`${styles.section} ${styles.effect}`}>
          <EffectBrief effect={view.effect} view={view} pathOf={pathOf} />
          <p><LinkButton look="main" prefetch={false} href={whatIfPath(seriesId, piecesOf(view))}>See what moves, keep it or make it so</LinkButton></p>
        </div>
      )}
      {view.chosen.length === 0 ? <p className={styles.soft}>One tap shows what it does to releases and bank. The accepted plan stays as it is.</p> : <h3>Something else too?</h3>}
      <Choices view={view} pathOf={pathOf} />
    </>
  );
}
