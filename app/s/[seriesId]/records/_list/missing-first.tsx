import { EmptyState, LinkButton, newRecordPath } from '@/app/_ui';
import { wordsOfKind, type FormView } from '@/lib/views';

/** Instead of a form that could not be filled in: what has to be there first. */
export function MissingFirst({ seriesId, missing }: { readonly seriesId: string; readonly missing: FormView['missing'] }) {
  return (
    <EmptyState
      title="Something else comes first"
      actions={missing.map(({ kind }, index) => (
        <LinkButton key={kind} look={index === 0 ? 'main' : 'plain'} href={newRecordPath(seriesId, kind)}>
          Add {wordsOfKind(kind).one}
        </LinkButton>
      ))}
    >
      {missing.map(({ kind, text }) => (
        <p key={kind}>{text}</p>
      ))}
    </EmptyState>
  );
}
