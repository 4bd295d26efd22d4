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
  await page.getByLabel('The date for another confidence').fill('150');
  await page.getByRole('button', { name: 'Tell the date' }).click();
  await expect(page.getByText('"150" is not one. Type 85')).toBeVisible();
  await page.getByRole('link', { name: 'Past forecasts' }).click();
  await expect(page.getByRole('heading', { level: 1, name: 'Past forecasts' })).toBeVisible();
  await expectNoAxeViolations(page);
});

test('the weekly review prints on one sheet, without the rooms and buttons of the screen', async ({ page }) => {
  await page.goto(`${DEMO}/progress/review`);
  await expect(page.getByRole('heading', { level: 1, name: /^Review of week \d{4}-W\d\d$/ })).toBeVisible();
  await page.emulateMedia({ media: 'print' });
  await expect(page.getByRole('navigation', { name: 'Rooms' })).toBeHidden();
  await expect(page.getByRole('link', { name: 'Progress', exact: true })).toHaveCount(0);
  const pdf = (await page.pdf({ preferCSSPageSize: true })).toString('latin1');
  expect(/\/Type\s*\/Pages\b[^>]*?\/Count\s+(\d+)/.exec(pdf)?.[1]).toBe('1');
});

test('what-ifs go from a tap beside the week to two variants compared and an accepted plan, and are undone', async ({ page }) => {
  test.setTimeout(150_000);
  const slow = { timeout: 30_000 };
  await page.setViewportSize({ width: 390, height: 844 });
  await page.goto(DEMO);
  const panel = page.getByRole('region', { name: 'What if this week breaks?' });
  await panel.getByRole('link', { name: 'We take a week off' }).click();
  await expect(panel.getByRole('heading', { name: /^No session until [^;]+$/ })).toBeVisible(slow);
  await expectNoSidewaysScroll(page);
  await panel.getByRole('link', { name: 'See what moves, keep it or make it so' }).click();
  await expect(page.getByRole('heading', { level: 1, name: 'What if' })).toBeVisible(slow);

  await page.getByLabel('Keep under a name').fill('A week off');
  await page.getByRole('button', { name: 'Keep', exact: true }).click();
  await expect(page.getByRole('checkbox', { name: 'A week off' })).toBeVisible(slow);
  await page.getByRole('link', { name: 'The heater is broken' }).click();
  await expect(page.getByRole('heading', { name: /^No session until .+; No heating for seven days$/ })).toBeVisible(slow);
  await page.getByLabel('Keep under a name').fill('Off in the cold');
  await page.getByRole('button', { name: 'Keep', exact: true }).click();
  await page.getByRole('checkbox', { name: 'Off in the cold' }).check(slow);
  await page.getByRole('checkbox', { name: 'A week off' }).check();
  await page.getByRole('button', { name: 'Compare two' }).click();
  await expect(page.getByRole('heading', { name: /^(A week off against Off in the cold|Off in the cold against A week off)$/ })).toBeVisible(slow);
  await expect(page.getByRole('row', { name: /^Episodes in hand/ })).toBeVisible();
  await expectNoAxeViolations(page);
  await expectNoSidewaysScroll(page);

  await page.getByRole('link', { name: 'We take a week off' }).click();
  await expect(page.getByRole('heading', { name: /^No session until [^;]+$/ })).toBeVisible(slow);
  await page.getByRole('button', { name: 'Make it so and draft a plan' }).click();
  await expect(page).toHaveURL(/\/plans$/, { timeout: 40_000 });
  await page.getByLabel('Why, for the list of plans').fill('Nobody is here');
  await page.getByRole('button', { name: /^Accept plan \d+$/ }).click();
  await expect(page.getByRole('heading', { name: /Plan \d+ accepted/ })).toBeVisible(slow);
  await page.getByText('All plans').click();
  await expect(page.getByText(/because: Nobody is here$/)).toBeVisible();
  await page.goto(`${DEMO}/history`);
  await page.getByRole('button', { name: /^Undo/ }).first().click();
  await expect(page.getByText(/^Undid/).first()).toBeVisible();
});
