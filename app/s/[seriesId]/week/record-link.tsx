import Link from 'next/link';
import type { ReactNode } from 'react';
import { recordPath } from '@/app/_ui';
import type { RecordLink as Target } from '@/lib/views';

interface RecordLinkProps {
  readonly seriesId: string;
  /** null: there is nothing to open. */
  readonly to: Pick<Target, 'kind' | 'id'> | null;
  readonly className?: string | undefined;
  readonly children: ReactNode;
}

/** A link to a record's page, or plain text where there is none. Pages hold hundreds of them, so none is fetched ahead. */
export function RecordLink({ seriesId, to, className, children }: RecordLinkProps) {
  const href = to === null ? null : recordPath(seriesId, to.kind, to.id);
  if (href === null) return <span className={className}>{children}</span>;
  return (
    <Link href={href} prefetch={false} className={className}>
      {children}
    </Link>
  );
}
