import { EmptyState, LinkButton, PageBody, PageHead } from '@/app/_ui';

export default function NotFoundInSeries() {
  return (
    <PageBody>
      <PageHead title="There is no such page here" />
      <EmptyState title="What stood here is gone, or never was" actions={<LinkButton look="main" href="/">Go to the list of series</LinkButton>}>
        <p>The record may have been removed; the history of the series knows, and can bring it back.</p>
      </EmptyState>
    </PageBody>
  );
}
