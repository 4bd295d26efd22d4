'use client';

import { useRouter } from 'next/navigation';
import { recordsPath, useNotices } from '@/app/_ui';
import { createSeriesAction, type SeriesMade } from '@/app/_actions/series';
import { PlainForm } from '@/app/_record-form';
import type { FormView } from '@/lib/views';

/** The form that starts a series, and goes on to its records. */
export function CreateSeries({ view }: { readonly view: FormView }) {
  const router = useRouter();
  const notices = useNotices();
  const goOn = ({ seriesId }: SeriesMade) => {
    notices.say('The series is made. Fill in its records from the top.');
    router.push(recordsPath(seriesId));
  };
  return <PlainForm view={view} submitWord="Start the series" save={createSeriesAction} onSaved={goOn} />;
}
