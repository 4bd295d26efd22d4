import type { Metadata } from 'next';
import Link from 'next/link';
import { notFound } from 'next/navigation';
import { OctagonX, TriangleAlert } from 'lucide-react';
import { captionsPath, PageBody, PageHead, safetyPath } from '@/app/_ui';
import { loadDocument, openViewContext, viewEpisodeSafety, type EpisodeSafetyView } from '@/lib/views';
import { Checklist } from '../../checklist';
import { GateDecision } from '../../gate-decision';
import styles from '../../safety.module.css';

interface Props {
  readonly params: Promise<{ seriesId: string; episodeId: string }>;
}

async function findView({ params }: Props) {
  const { seriesId, episodeId } = await params;
  const document = await loadDocument(seriesId);
  return document === null ? null : viewEpisodeSafety(await openViewContext(), document, episodeId);
}

export async function generateMetadata(props: Props): Promise<Metadata> {
  const view = await findView(props);
  return { title: view === null ? 'No such episode' : `Safety: ${view.episode.name}` };
}

export default async function EpisodeSafetyPage(props: Props) {
  const view = await findView(props);
  if (view === null) notFound();
  const { seriesId, episode, captions } = view;
  return (
    <PageBody>
      <PageHead title={episode.name} above={<Link href={safetyPath(seriesId)}>Safety</Link>} lead={`${episode.status}, released ${episode.release}. ${view.standing}`} />
      {view.isBehind ? (
        <p className={styles.stopBand}>
          <OctagonX size={20} aria-hidden /> This episode is called {episode.status}, and something on its list is open again.
        </p>
      ) : null}
      <GatePart view={view} />
      <Checklist view={view} />
      <section className={styles.section} aria-labelledby="captions-head">
        <h2 id="captions-head">Cautions as captions</h2>
        <p>
          {captions.ready} of {captions.of} cautions have their time in the cut.{' '}
          {captions.ready > 0 ? <a href={captionsPath(seriesId, episode.id)}>Download them as WebVTT</a> : 'Sign the lines “on screen” with the timecode in the cut; then they can be downloaded as WebVTT.'}
        </p>
      </section>
    </PageBody>
  );
}

function sayGate({ openBlocks, blocks }: EpisodeSafetyView): string {
  if (openBlocks > 0) return `${openBlocks} ${openBlocks === 1 ? 'thing blocks' : 'things block'} this episode`;
  return blocks.length > 0 ? `${blocks.length} open, all overridden` : 'nothing on this list is open';
}

function GatePart({ view }: { readonly view: EpisodeSafetyView }) {
  return (
    <section className={styles.section} aria-labelledby="gate-head">
      <h2 id="gate-head">The gate: {sayGate(view)}</h2>
      {view.overrides.map((text) => (
        <p key={text} className={styles.override}>
          <TriangleAlert size={18} aria-hidden /> Overridden by {text}
        </p>
      ))}
      {view.blocks.length === 0 ? null : (
        <details className={styles.fold} open={view.blocks.length <= 8}>
          <summary>What blocks it, and how each is answered</summary>
          <ol className={styles.blocks}>
            {view.blocks.map((block) => (
              <li key={block.id}>
                {block.anchor === null ? block.message : <a href={`#${block.anchor}`}>{block.message}</a>} <span className={styles.fix}>{block.fix}</span>
                {block.override === null ? null : <span className={styles.warn}> Set aside by {block.override}</span>}
              </li>
            ))}
          </ol>
        </details>
      )}
      <GateDecision view={view} />
    </section>
  );
}
