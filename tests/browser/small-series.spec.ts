import { expect, test, type Page } from '@playwright/test';
import { fillForm, planAndAccept } from './pages';

test.describe.configure({ mode: 'serial' });

let series = '';

async function addRecord(page: Page, kind: string, button: string, values: Readonly<Record<string, string>>): Promise<void> {
  await page.goto(`${series}/records/${kind}/new`);
  await fillForm(page, values);
  await page.getByRole('button', { name: button, exact: true }).click();
  await expect(page).not.toHaveURL(/\/new$/);
}

async function fillMoment(page: Page, group: string, date: string, time: string): Promise<void> {
  const fields = page.getByRole('group', { name: group });
  await fields.getByLabel('Date').fill(date);
  await fields.getByLabel('Time').fill(time);
}

/** Next Saturday as the date field takes it. */
function nextSaturday(): string {
  const day = new Date();
  day.setUTCDate(day.getUTCDate() + ((6 - day.getUTCDay() + 7) % 7 || 7));
  return day.toISOString().slice(0, 10);
}

test('a small series goes from nothing to a plan', async ({ page }) => {
  await page.goto('/');
  await page.getByText('Start another series').click();
  await fillForm(page, { Name: 'Garden gate' });
  await page.getByRole('button', { name: /^(Create|Start) (the )?series$/ }).click();
  await expect(page).toHaveURL(/\/s\/[^/]+/);
  series = new URL(page.url()).pathname.split('/').slice(0, 3).join('/');
  await page.goto(`${series}/plans`);
  await expect(page.getByRole('heading', { name: 'There is nothing to plan yet' })).toBeVisible();

  await addRecord(page, 'places', 'Add place', { Name: 'Shed' });
  await addRecord(page, 'people', 'Add person', { Name: 'Wren' });
  await page.goto(`${series}/records/sessions/new`);
  await fillForm(page, { Name: 'Saturday' });
  await page.getByRole('checkbox', { name: 'Shed' }).check();
  await page.getByRole('checkbox', { name: 'Wren' }).check();
  await fillMoment(page, 'Starts', nextSaturday(), '10:00');
  await fillMoment(page, 'Ends', nextSaturday(), '16:00');
  await page.getByRole('button', { name: 'Add session', exact: true }).click();
  await expect(page).not.toHaveURL(/\/new$/);

  await addRecord(page, 'tasks', 'Add task', { Name: 'Hang the gate', Smallest: '30', Likeliest: '1 h', Largest: '2 h' });
  await page.goto(`${series}/plans`);
  await planAndAccept(page);
  await page.getByRole('link', { name: 'Now', exact: true }).click();
  await expect(page.getByText('Hang the gate').first()).toBeVisible();
});

test('a broken rule is told at its field, and nothing typed is lost', async ({ page }) => {
  await page.goto(`${series}/records/tasks/new`);
  await fillForm(page, { Name: 'Paint the gate', Smallest: '0', Likeliest: '1 h', Largest: '30' });
  await page.getByRole('button', { name: 'Add task', exact: true }).click();
  await expect(page.getByRole('alert').first()).toBeVisible();
  await expect(page.getByLabel('Smallest', { exact: true })).toHaveAttribute('aria-invalid', 'true');
  await expect(page.getByLabel('Name', { exact: true })).toHaveValue('Paint the gate');
  await expect(page).toHaveURL(/\/new$/);
});

test('a name of ten thousand characters is refused with its length', async ({ page }) => {
  await page.goto(`${series}/records/places/new`);
  await fillForm(page, { Name: 'x'.repeat(10_000) });
  await page.getByRole('button', { name: 'Add place', exact: true }).click();
  await expect(page.getByText(/10,?000 characters/).first()).toBeVisible();
});

test('a removal is undone from the notice', async ({ page }) => {
  await addRecord(page, 'places', 'Add place', { Name: 'Lean-to' });
  await page.goto(`${series}/records/places`);
  await page.getByRole('button', { name: 'Remove Lean-to' }).click();
  await expect(page.getByRole('link', { name: 'Lean-to' })).toBeHidden();
  await page.getByRole('button', { name: 'Undo' }).first().click();
  await expect(page.getByRole('link', { name: 'Lean-to' })).toBeVisible();
});

test('a place that tasks use is not removed, and the page says what uses it', async ({ page }) => {
  await page.goto(`${series}/records/places`);
  await page.getByRole('button', { name: 'Remove Shed' }).click();
  await expect(page.getByText(/Hang the gate/).first()).toBeVisible();
});
