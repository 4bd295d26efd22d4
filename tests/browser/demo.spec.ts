import { expect, test } from '@playwright/test';
import { addDays, formatIsoWeek, isoWeekOf } from '@/lib/calendar';
import { DEMO, expectNoSidewaysScroll, planAndAccept } from './pages';

test.describe.configure({ mode: 'serial' });

test('a first start shows the demo and leads to a plan of this week', async ({ page }) => {
  await page.goto('/');
  await page.getByRole('link', { name: 'Back on the Bread Round' }).click();
  await expect(page).toHaveURL(/\/week\/\d{4}-W\d{2}$/);
  await expect(page.getByText('There is no accepted plan yet.')).toBeVisible();
  await page.getByRole('link', { name: 'Make a plan' }).click();
  await planAndAccept(page);
  await page.getByRole('link', { name: 'Week', exact: true }).click();
  await expect(page.getByText(/plan 1, made/)).toBeVisible();
});

test('a block says why it is there and can be pinned and let go', async ({ page }) => {
  await page.goto(DEMO);
  await expect(page).toHaveURL(/\/week\//);
  const thisWeek = page.url();
  await page.getByRole('link', { name: /^Week after/ }).click();
  // The strip of the week that was left stays until the next one has come, and takes its sheets with it.
  await expect(page).not.toHaveURL(thisWeek);
  await expect(page.getByRole('link', { name: /^Week before/ })).toHaveAttribute('href', new URL(thisWeek).pathname);
  await page.getByRole('region', { name: /^Strip of the week/ }).getByRole('button', { name: /^Work: / }).first().click();
  const sheet = page.getByRole('dialog');
  await expect(sheet).toBeVisible();
  await expect(sheet.getByRole('heading', { name: 'Why here' })).toBeVisible();
  await sheet.getByRole('button', { name: /^Pin/ }).click();
  await expect(page.getByRole('status').getByText(/^Fixed the start of/)).toBeVisible();
  await page.getByRole('button', { name: 'Undo' }).first().click();
  await expect(page.getByRole('status').getByText(/^Undid/)).toBeVisible();
});

test('work is not ticked by one tap while work before it is open', async ({ page }) => {
  await page.goto(`${DEMO}/week/${formatIsoWeek(isoWeekOf(addDays(new Date().toISOString().slice(0, 10), 35)))}`);
  await page.getByRole('region', { name: /^Strip of the week/ }).getByRole('button', { name: /^Work: / }).first().click();
  const sheet = page.getByRole('dialog');
  await sheet.getByRole('button', { name: 'Done', exact: true }).click();
  await expect(sheet.getByText(/^Before .* comes work that is not ticked: /)).toBeVisible();
  await expect(sheet.getByRole('button', { name: 'Done all the same' })).toBeVisible();
  await sheet.getByRole('button', { name: 'Not yet' }).click();
  await expect(sheet.getByRole('button', { name: 'Done', exact: true })).toBeVisible();
});

test('the phone shows now, next and what not to forget', async ({ page }) => {
  await page.setViewportSize({ width: 390, height: 844 });
  await page.goto(`${DEMO}/now`);
  await expect(page.getByRole('heading', { level: 1 })).toBeVisible();
  await expect(page.getByRole('region', { name: /forget/ })).toBeVisible();
  await expectNoSidewaysScroll(page);
  for (const link of await page.getByRole('navigation', { name: 'Rooms' }).getByRole('link').all()) {
    const box = await link.boundingBox();
    expect(box!.height).toBeGreaterThanOrEqual(44);
  }
  await page.getByRole('button', { name: 'All rooms' }).click();
  await page.getByRole('link', { name: 'History', exact: true }).click();
  await expect(page).toHaveURL(/\/history$/);
  await expect(page.getByRole('link', { name: 'Climate', exact: true })).toBeHidden();
});
