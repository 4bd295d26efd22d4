'use client';

import { useSyncExternalStore, type ReactNode } from 'react';

const never = () => () => {};

/**
 * Holds its controls back until the page answers to them: what is typed or pressed in the first moments,
 * before the script has taken over, would be lost. Needs no place in the layout.
 */
export function UntilReady({ children, className }: { readonly children: ReactNode; readonly className?: string | undefined }) {
  const isReady = useSyncExternalStore(never, () => true, () => false);
  return (
    <fieldset role="presentation" disabled={!isReady} className={className === undefined ? 'bare-group' : `bare-group ${className}`}>
      {children}
    </fieldset>
  );
}
