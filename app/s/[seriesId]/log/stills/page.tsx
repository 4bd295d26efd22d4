import type { Metadata } from 'next';
import { notFound } from 'next/navigation';
import { TriangleAlert } from 'lucide-react';
import { EmptyState, LinkButton, logPath, PageBody } from '@/app/_ui';
import { loadDocument, openViewContext, viewStills, type StillView } from '@/lib/views';
import { LogHead } from '../log-head';
import styles from '../log.module.css';

export const metadata: Metadata = { title: 'Stills' };

/** A number stays with its unit: `4300 K`. */
const joinUnits = (words: string): string => words.replaceAll(/(\d) (?=(?:K|mm)\b)/g, '$1\u00A0');

function Still({ seriesId, still, place }: { readonly seriesId: string; readonly still: StillView; readonly place: string }) {
  return (
    <figure className={styles.still}>
      {still.photoId === null ? <p className={styles.noPhoto}>No photo of {still.name}</p> : <img src={`${logPath(seriesId)}/photos/${encodeURIComponent(still.photoId)}`} alt={`${place} ${still.name}`} loading="lazy" />}
      <figcaption>
        <strong>{place} {still.name}</strong>
        <span>{still.when}</span>
        {still.look.map(({ words, differs }) => (differs ? <span key={words} className={styles.differs}><TriangleAlert size={16} aria-hidden /> Differs. {joinUnits(words)}</span> : <span key={words}>{joinUnits(words)}</span>))}
      </figcaption>
    </figure>
  );
}

export default async function StillsPage({ params }: { readonly params: Promise<{ seriesId: string }> }) {
  const { seriesId } = await params;
  const document = await loadDocument(seriesId);
  if (document === null) notFound();
  const { episodes } = await viewStills(await openViewContext(), document);
  return (
    <PageBody>
      <LogHead seriesId={seriesId} at="stills" title="Stills side by side" lead="Where one piece of an episode ends and the next begins, in the order of airing." />
      {episodes.length === 0 ? (
        <EmptyState title="No two neighbouring pieces are filmed yet" actions={<LinkButton look="main" href={`${logPath(seriesId)}/take`} prefetch={false}>Log a take</LinkButton>}>
          <p>Log takes of two tasks of one episode, each with a photo, and they stand here beside each other.</p>
        </EmptyState>
      ) : episodes.map((episode) => (
        <section key={episode.id} className={styles.group} aria-labelledby={`stills-${episode.id}`}>
          <h2 id={`stills-${episode.id}`}>{episode.name}</h2>
          {episode.pairs.map((pair) => (
            <div key={`${pair.left.name}>${pair.right.name}`} className={pair.left.photoId === null && pair.right.photoId === null ? `${styles.pair} ${styles.bare}` : styles.pair}>
              <Still seriesId={seriesId} still={pair.left} place="End of" />
              <Still seriesId={seriesId} still={pair.right} place="Start of" />
            </div>
          ))}
        </section>
      ))}
    </PageBody>
  );
}
