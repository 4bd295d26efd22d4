'use client';

import { useRouter } from 'next/navigation';
import { kindPath, LinkButton, useNotices } from '@/app/_ui';
import { createSessionsAction } from '@/app/_actions/records';
import { PlainForm } from '@/app/_record-form';
import type { FormView } from '@/lib/views';

/** Makes a session on the chosen weekdays of a number of weeks. */
export function RepeatSessions({ view }: { readonly view: FormView }) {
  const { seriesId } = view;
  const router = useRouter();
  const notices = useNotices();
  const back = kindPath(seriesId, 'session');
  return (
    <PlainForm
      view={view}
      submitWord="Add the sessions"
      save={(draft) => createSessionsAction(seriesId, draft)}
      onSaved={({ saved }) => {
        notices.sayChange(seriesId, saved);
        router.push(back);
      }}
    >
      <LinkButton look="quiet" href={back}>
        Cancel
      </LinkButton>
    </PlainForm>
  );
}
