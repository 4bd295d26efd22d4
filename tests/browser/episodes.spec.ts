import { expect, test } from '@playwright/test';
import { DEMO, expectNoAxeViolations, expectNoSidewaysScroll } from './pages';

test('segments are moved by key and by choice, and the runtime follows at once', async ({ page }) => {
  await page.goto(`${DEMO}/episodes`);
  const [from, to] = [page.getByRole('article').filter({ hasText: 'Down to the frame' }).first(), page.getByRole('article').filter({ hasText: 'Stuck pistons' }).first()];
  await from.getByText('5 segments').click();
  await from.getByRole('listitem').filter({ hasText: 'Cutting 108 spokes' }).dragTo(to, { sourcePosition: { x: 60, y: 14 }, targetPosition: { x: 100, y: 20 } });
  await expect(from.getByText('13.5 min')).toBeVisible();
  await expect(page.getByRole('status').getByText('Moved segment Cutting 108 spokes to Stuck pistons')).toBeVisible();
  await page.getByRole('button', { name: 'Undo' }).first().click();
  await expect(from.getByText('16.5 min, 0.5 over the wish of 16')).toBeVisible();
  await page.getByRole('link', { name: 'Down to the frame', exact: true }).click();
  await expect(page.getByText('16.5 min, 0.5 over the wish of 16').first()).toBeVisible();
  const names = page.getByRole('main').getByRole('listitem').filter({ has: page.getByRole('button', { name: /^Move .+ later$/ }) }).getByRole('link');
  await expect(names.first()).toHaveText('Forty loose balls');
  await page.getByRole('button', { name: 'Move Forty loose balls later' }).press('ArrowDown');
  await expect(names.first()).toHaveText('What is left of the drums');
  await expect(page.getByRole('status').getByText(/^Moved segment Forty loose balls within its episode/)).toBeVisible();
  await page.getByLabel('Move Cutting 108 spokes to another episode').selectOption({ label: 'Three gears' });
  await expect(page.getByText('13.5 min, 2.5 under the wish of 16').first()).toBeVisible();
  await page.getByRole('button', { name: 'Undo' }).first().click();
  await expect(page.getByText('16.5 min, 0.5 over the wish of 16').first()).toBeVisible();
  await expectNoAxeViolations(page);
});

test('a proposal, a fortnightly what-if and planning by experience, on a phone too', async ({ page }) => {
  await page.setViewportSize({ width: 390, height: 844 });
  await page.goto(`${DEMO}/episodes`);
  await page.getByRole('link', { name: 'What if: every 14 days' }).click();
  await expect(page.getByText(/Every 14 days: /)).toBeVisible();
  await page.getByRole('button', { name: 'Put them like this (best)' }).click();
  await expect(page.getByRole('status').getByText(/^Put \d+ segments into \d+ episodes/)).toBeVisible();
  await page.getByRole('button', { name: 'Undo' }).first().click();
  await expectNoSidewaysScroll(page);
  await expectNoAxeViolations(page);
  await page.goto(`${DEMO}/episodes/estimates`);
  await page.getByRole('button', { name: 'Plan by experience' }).click();
  await expect(page.getByRole('heading', { name: 'The plan goes by experience' })).toBeVisible();
  await expectNoSidewaysScroll(page);
  await page.getByRole('button', { name: 'Plan by the typed times again' }).click();
  await expect(page.getByRole('heading', { name: 'The plan goes by the typed times' })).toBeVisible();
});
