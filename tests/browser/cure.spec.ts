import { expect, test } from '@playwright/test';
import { DEMO, expectNoAxeViolations, expectNoSidewaysScroll } from './pages';

/** Two days of a logger with three faults in it. */
function faultyFile(): string {
  const rows = Array.from({ length: 48 }, (_, hour) => `2026-11-${String(16 + Math.floor(hour / 24)).padStart(2, '0')} ${String(hour % 24).padStart(2, '0')}:00,${(9 + Math.sin(hour / 4)).toFixed(1)},80`);
  rows[3] = '2026-11-16 03:00,warm,80';
  rows[7] = '2026-11-16 07:00,9.1,180';
  rows[11] = 'some day,9.0,80';
  return ['time,temperature,humidity', ...rows].join('\n');
}

test('a logger’s file with faults is imported: good rows are kept, the others are named by row and column, and it can be undone', async ({ page }) => {
  await page.goto(`${DEMO}/climate`);
  await expect(page.getByRole('img', { name: 'Temperatures and dew margin by the hour' })).toBeVisible();
  await page.getByLabel('File of the logger').setInputFiles({ name: 'logger.csv', mimeType: 'text/csv', buffer: Buffer.from(faultyFile()) });
  await page.getByLabel('Name', { exact: true }).fill('Logger on the bench');
  await page.getByRole('button', { name: 'Import', exact: true }).click();
  await expect(page.getByText('46 of 48 rows kept.')).toBeVisible();
  await expect(page.getByText('Column temperature. Row 5: the temperature "warm" is no number.')).toBeVisible();
  await expect(page.getByText(/Column humidity. Row 9:/)).toBeVisible();
  await expect(page.getByText(/Column time. Row 13:/)).toBeVisible();
  await expect(page.getByRole('link', { name: 'Logger on the bench' })).toBeVisible();
  await expectNoAxeViolations(page);
  await page.getByRole('button', { name: 'Undo' }).click();
  await expect(page.getByRole('link', { name: 'Logger on the bench' })).toHaveCount(0);
});

test('a coat that was just laid waits with its stages, and heating is weighed by hours, energy and money', async ({ page }) => {
  await page.goto(`${DEMO}/records/tasks/task-body-etch`);
  await page.locator('summary', { hasText: 'fixed times' }).click();
  const done = page.getByRole('group', { name: /^Done at/ });
  const laid = new Date(Date.now() - 3_600_000);
  await done.getByLabel('Date').fill(laid.toISOString().slice(0, 10));
  await done.getByLabel('Time').fill(laid.toISOString().slice(11, 16));
  await page.getByRole('button', { name: /^Save/ }).click();
  await expect(page.getByRole('status').getByText(/^Changed task/)).toBeVisible();
  await page.goto(`${DEMO}/waits`);
  await expect(page.getByText(/Hands off until|Touchable since/).first()).toBeVisible();
  await expect(page.getByRole('heading', { name: 'What heating would buy' })).toBeVisible();
  await page.getByRole('button', { name: 'Work it out' }).click();
  await expect(page).toHaveURL(/what=/);
  await expect(page.getByRole('table').getByRole('row')).toHaveCount(17);
  await expect(page.getByText(/kWh/).first()).toBeVisible();
  await expectNoAxeViolations(page);
  await page.setViewportSize({ width: 320, height: 700 });
  await expectNoSidewaysScroll(page);
});
