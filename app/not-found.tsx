import { EmptyState, HomeBand, LinkButton, PageBody, PageHead } from '@/app/_ui';

export default function NotFound() {
  return (
    <>
      <HomeBand />
      <PageBody>
        <PageHead title="There is no such page" />
        <EmptyState title="What stood here is gone, or never was" actions={<LinkButton look="main" href="/">Go to the list of series</LinkButton>}>
          <p>The address may have a slip in it, or the series has been removed.</p>
        </EmptyState>
      </PageBody>
    </>
  );
}
