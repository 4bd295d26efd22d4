'use client';

import { ActionButton } from '@/app/_actions/action-button';
import { copyMaterialAction } from './actions';

interface CopyButtonProps {
  readonly seriesId: string;
  readonly libraryId: string;
  readonly name: string;
}

/** Copies one material; the notice offers to take it back. */
export function CopyButton({ seriesId, libraryId, name }: CopyButtonProps) {
  return (
    <ActionButton seriesId={seriesId} run={() => copyMaterialAction(seriesId, libraryId)}>
      Copy to the series<span className="visually-hidden">: {name}</span>
    </ActionButton>
  );
}
