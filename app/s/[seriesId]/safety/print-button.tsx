'use client';

import { Printer } from 'lucide-react';
import { Button, UntilReady } from '@/app/_ui';

export function PrintButton() {
  return (
    <UntilReady>
      <Button onClick={() => window.print()}>
        <Printer size={18} aria-hidden /> Print
      </Button>
    </UntilReady>
  );
}
