import type { Metadata } from 'next';
import Link from 'next/link';
import { notFound } from 'next/navigation';
import { kindPath, PageBody, PageHead } from '@/app/_ui';
import { loadDocument, viewMaterialLibrary } from '@/lib/views';
import { CopyButton } from './copy-button';
import sheets from '../../../_sheets/sheets.module.css';
import styles from './page.module.css';

interface Props {
  readonly params: Promise<{ seriesId: string }>;
}

export const metadata: Metadata = { title: 'Library of materials' };

export default async function LibraryPage({ params }: Props) {
  const { seriesId } = await params;
  if ((await loadDocument(seriesId)) === null) notFound();
  return (
    <PageBody>
      <PageHead
        title="Library of materials"
        lead="Kinds of material, not products. Copy one, then change it to what the data sheet on the tin says: that comes first."
        above={<Link href={kindPath(seriesId, 'material')}>Materials</Link>}
      />
      <ol className={`plain ${sheets.entries}`}>
        {viewMaterialLibrary().map((material) => (
          <li key={material.id} className={`${sheets.entry} ${sheets.more}`}>
            <h2>{material.name} <span className={sheets.soft}>{material.sort}</span></h2>
            <p className={sheets.soft}>{material.unsourced === 0 ? 'Every value has a source.' : `${material.unsourced} of ${material.values.length} values are common practice without a source.`}</p>
            <CopyButton seriesId={seriesId} libraryId={material.id} name={material.name} />
            <details>
              <summary>Values, sources and cautions<span className="visually-hidden">: {material.name}</span></summary>
              <dl className={sheets.facts}>
                {material.values.map(({ label, value, source, isSourced }) => (
                  <div key={label}>
                    <dt>{label}</dt>
                    <dd>{value} <span className={isSourced ? sheets.soft : styles.unsourced}>({source})</span></dd>
                  </div>
                ))}
              </dl>
              <ul>{material.cautions.map((caution) => <li key={caution}>{caution}</li>)}</ul>
            </details>
          </li>
        ))}
      </ol>
    </PageBody>
  );
}
