import type { Metadata, Viewport } from 'next';
import type { ReactNode } from 'react';
import '@fontsource-variable/atkinson-hyperlegible-next';
import './_ui/tokens.css';
import './_ui/base.css';
import './_ui/print.css';
import { NoticeHost } from './_ui';
import { THEME_SCRIPT } from './_ui/theme';

export const metadata: Metadata = {
  title: { default: 'Benchtake', template: '%s · Benchtake' },
  description: 'Plans next week of a build that is filmed as it goes.',
};

/** Every page shows what the database holds at the moment it is asked for. */
export const dynamic = 'force-dynamic';

export const viewport: Viewport = {
  width: 'device-width',
  initialScale: 1,
  themeColor: [
    { media: '(prefers-color-scheme: light)', color: '#f6f6f0' },
    { media: '(prefers-color-scheme: dark)', color: '#111418' },
  ],
};

export default function RootLayout({ children }: { children: ReactNode }) {
  return (
    <html lang="en-GB" suppressHydrationWarning>
      <head>
        <script dangerouslySetInnerHTML={{ __html: THEME_SCRIPT }} />
      </head>
      <body>
        <a href="#content" className="skip-link">
          Skip to the content
        </a>
        <NoticeHost>{children}</NoticeHost>
      </body>
    </html>
  );
}
