import { expect, test } from '@playwright/test';
import { DEMO, expectNoAxeViolations, expectNoSidewaysScroll } from './pages';

test('takes logged without network survive a reload and arrive once, in their order', async ({ page, context }) => {
  await page.setViewportSize({ width: 390, height: 844 });
  await page.goto(`${DEMO}/log/take`);
  await expect(page.getByText('This page opens without network on this device.')).toBeVisible({ timeout: 20_000 });
  for (const name of ['Camera runs', 'Good take', 'No good', 'Not sure']) {
    const box = await page.getByRole('button', { name }).boundingBox();
    expect(box!.height).toBeGreaterThanOrEqual(96);
  }
  await expectNoAxeViolations(page);
  await expectNoSidewaysScroll(page);

  await context.setOffline(true);
  await page.getByRole('button', { name: 'Camera runs' }).click();
  await page.getByRole('button', { name: 'Good take' }).click();
  await expect(page.getByText(/^Kept: good take/)).toBeVisible();
  await page.getByRole('button', { name: 'No good' }).click();
  await expect(page.getByText('2 entries wait to be sent, in order; there is no network.')).toBeVisible();

  await page.reload();
  await expect(page.getByText('2 entries wait to be sent, in order; there is no network.')).toBeVisible();
  await page.getByRole('button', { name: 'Not sure' }).click();
  await expect(page.getByText('3 entries wait to be sent, in order; there is no network.')).toBeVisible();

  await context.setOffline(false);
  await expect(page.getByText('Everything has been sent.')).toBeVisible({ timeout: 20_000 });
  await page.goto(`${DEMO}/log`);
  const takes = page.getByRole('heading', { level: 3, name: /Take \d+: / });
  await expect(takes).toHaveText([/Take 3: unsure/, /Take 2: no good/, /Take 1: good/]);
  await page.reload();
  await expect(takes).toHaveCount(3);
});

test('the pages of the log open without a fault, and a finding is let pass with a reason', async ({ page }) => {
  for (const at of ['', '/states', '/checks', '/promises', '/pickups', '/stills']) {
    await page.goto(`${DEMO}/log${at}`);
    await expect(page.getByRole('heading', { level: 1 })).toBeVisible();
    await expectNoAxeViolations(page);
    await expectNoSidewaysScroll(page);
  }
  await page.goto(`${DEMO}/log?find=nitrile`);
  await expect(page.getByRole('heading', { level: 3, name: /Look/ }).first()).toBeVisible();
  await page.goto(`${DEMO}/log/checks`);
  await page.getByText('Let it pass', { exact: true }).first().click();
  await page.getByRole('button', { name: 'Let it pass' }).first().click();
  await expect(page.getByText('A finding is let pass only with a reason.')).toBeVisible();
  await page.getByLabel('Why it does no harm').first().fill('The camera is set right now');
  await page.getByRole('button', { name: 'Let it pass' }).first().click();
  await expect(page.getByText(/^Let pass by .*The camera is set right now$/).first()).toBeVisible();
});
