'use client';

import { useEffect } from 'react';
import { Button } from './button';
import { EmptyState } from './empty-state';
import { PageHead } from './page-head';
import { PageBody } from './shell';

interface FailedPageProps {
  readonly error: Error & { readonly digest?: string };
  readonly reset: () => void;
}

/** Shown when a page broke. Nothing that was saved is lost. */
export function FailedPage({ error, reset }: FailedPageProps) {
  useEffect(() => {
    console.error(error);
  }, [error]);
  return (
    <PageBody>
      <PageHead title="This page broke" />
      <EmptyState title="Something went wrong in the program" actions={<Button look="main" onClick={reset}>Try again</Button>}>
        <p>What was saved before is kept. If trying again does not help, the terminal in which the program runs says more.</p>
        {error.digest ? <p>Look there for {error.digest}.</p> : null}
      </EmptyState>
    </PageBody>
  );
}
