import type { ReactNode } from 'react';

/** What scrolls is reached by keyboard too, in browsers that do not see to it themselves. */
const REACHABLE = { tabIndex: 0 };

/** A named part of a page that scrolls inside itself, so that the page never does. */
export function ScrollRegion({ label, className, children }: { readonly label: string; readonly className?: string | undefined; readonly children: ReactNode }) {
  return (
    <section className={className} aria-label={label} {...REACHABLE}>
      {children}
    </section>
  );
}
