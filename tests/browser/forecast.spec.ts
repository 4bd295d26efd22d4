import { expect, test } from '@playwright/test';
import { DEMO, expectNoAxeViolations, expectNoSidewaysScroll, planAndAccept } from './pages';

test.describe.configure({ mode: 'serial' });

test('odds are run on the accepted plan and read on one screen', async ({ page }) => {
  test.setTimeout(150_000);
  await page.goto(`${DEMO}/plans`);
  await planAndAccept(page);
  await page.getByRole('link', { name: 'Progress', exact: true }).click();
  await page.getByRole('button', { name: /^(Run a forecast|Forecast again)$/ }).click();
  await expect(page.getByText(/^Forecast \d+ of plan \d+, made/)).toBeVisible({ timeout: 100_000 });
  await expect(page.getByText('How sure?')).toBeVisible();
  await expectNoAxeViolations(page);
  await page.getByRole('link', { name: 'All odds' }).click();
  await expect(page.getByRole('heading', { name: 'When the build is done' })).toBeVisible();
  await expectNoAxeViolations(page);
});

test('a what-if goes from a tap to an accepted plan, and is undone', async ({ page }) => {
  test.setTimeout(120_000);
  await page.setViewportSize({ width: 390, height: 844 });
  await page.goto(`${DEMO}/progress/what-if`);
  await page.getByRole('link', { name: 'We take a week off' }).click();
  await expect(page.getByRole('heading', { name: /^No session until/ })).toBeVisible({ timeout: 30_000 });
  await expectNoAxeViolations(page);
  await expectNoSidewaysScroll(page);
  await page.getByLabel('Keep under a name').fill('A week off');
  await page.getByRole('button', { name: 'Keep', exact: true }).click();
  await expect(page.getByRole('heading', { name: 'Kept variants' })).toBeVisible({ timeout: 30_000 });
  await page.getByRole('button', { name: 'Make it so and draft a plan' }).click();
  await expect(page).toHaveURL(/\/plans$/, { timeout: 40_000 });
  await page.getByRole('button', { name: /^Accept plan \d+$/ }).click();
  await expect(page.getByRole('heading', { name: /Plan \d+ accepted/ })).toBeVisible();
  await page.goto(`${DEMO}/history`);
  await page.getByRole('button', { name: /^Undo/ }).first().click();
  await expect(page.getByText(/^Undid/).first()).toBeVisible();
});
