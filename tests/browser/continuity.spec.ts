import { readlink, writeFile } from 'node:fs/promises';
import path from 'node:path';
import { chromium, expect, test, type BrowserContext } from '@playwright/test';
import sharp from 'sharp';
import { DEMO, expectNoAxeViolations, expectNoSidewaysScroll } from './pages';

/** 800 by 600 on its side, with a place and a camera written into it. */
const photoWithPlace = () => sharp({ create: { width: 800, height: 600, channels: 3, background: '#884422' } })
  .withExif({ IFD0: { Make: 'PhoneMaker' }, IFD3: { GPSLatitude: '51/1 30/1 0/1', GPSLatitudeRef: 'N' } }).withMetadata({ orientation: 6 }).jpeg().toBuffer();

test('takes logged without network survive a reload and arrive once, in their order', async ({ page, context }, testInfo) => {
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

  // The first one arrives, and the answer is lost on the way: it is sent again, and kept once.
  let lost = 0;
  await context.route('**/log/entries', async (route) => {
    await route.fetch();
    lost += 1;
    await route.abort();
  }, { times: 1 });
  await context.setOffline(false);
  await expect.poll(() => lost, { timeout: 20_000 }).toBe(1);
  await page.getByRole('button', { name: 'Send now' }).click();
  await expect(page.getByText('Everything has been sent.')).toBeVisible({ timeout: 20_000 });

  // A photo of the last take, and three files that cannot be kept: each is named, and stays on the device.
  const wide = await sharp({ create: { width: 30_000, height: 4, channels: 3, background: '#333' } }).png().toBuffer();
  const heavy = testInfo.outputPath('heavy.jpg');
  await writeFile(heavy, Buffer.alloc(60_000_000));
  const photos = page.getByLabel(/^Photo of the unsure take/);
  await photos.setInputFiles(heavy);
  await photos.setInputFiles([
    { name: 'words.jpg', mimeType: 'image/jpeg', buffer: Buffer.from('not a photo') }, { name: 'wide.png', mimeType: 'image/png', buffer: wide },
    { name: 'bench.jpg', mimeType: 'image/jpeg', buffer: await photoWithPlace() },
  ]);
  await expect(page.getByText('The photo has 60 MB; at most 30 MB are kept.')).toBeVisible({ timeout: 20_000 });
  await expect(page.getByText('The photo is 30000 × 4 px;')).toBeVisible({ timeout: 20_000 });
  await expect(page.getByText(/is not a photo|cannot be read/)).toBeVisible();
  await expect(page.getByText('Everything has been sent.')).toBeVisible({ timeout: 20_000 });

  await page.goto(`${DEMO}/log`);
  const takes = page.getByRole('heading', { level: 3, name: /Take \d+: / });
  await expect(takes).toHaveText([/Take 3: unsure/, /Take 2: no good/, /Take 1: good/]);
  await page.reload();
  await expect(takes).toHaveCount(3);
  const picture = page.getByRole('img', { name: 'Take 3: unsure, 1' });
  await expect(picture).toHaveCount(1);
  const [small, large] = await Promise.all(['?size=small', ''].map(async (size) => {
    const address = (await picture.getAttribute('src'))!.replace('?size=small', size);
    return sharp(await (await page.request.get(address)).body()).metadata();
  }));
  expect([small!.format, Math.max(small!.width, small!.height), small!.exif]).toEqual(['jpeg', 400, undefined]);
  expect([large!.format, large!.width, large!.height, large!.exif]).toEqual(['jpeg', 600, 800, undefined]);
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

/** Ends the browser as a flat battery would: no handler runs, nothing is written any more. Its folder's lock is a link named after its process. */
async function killBrowser(context: BrowserContext, folder: string): Promise<void> {
  const lock = await readlink(path.join(folder, 'SingletonLock'));
  const isGone = context.waitForEvent('close');
  process.kill(Number(lock.slice(lock.lastIndexOf('-') + 1)), 'SIGKILL');
  await isGone;
}

test('takes logged without network survive a killed browser and arrive once, in their order', async ({ baseURL, launchOptions, locale, page }, testInfo) => {
  await page.goto(`${DEMO}/log`);
  const takesOn = (on: typeof page) => on.getByRole('heading', { level: 3, name: /Take \d+: / });
  const before = await takesOn(page).count();

  const folder = testInfo.outputPath('profile');
  const openPhone = () => chromium.launchPersistentContext(folder, { ...launchOptions, baseURL, locale, viewport: { width: 390, height: 844 } });
  const waits = '2 entries wait to be sent, in order; there is no network.';
  const first = await openPhone();
  const phone = await first.newPage();
  await phone.goto(`${DEMO}/log/take`);
  await expect(phone.getByText('This page opens without network on this device.')).toBeVisible({ timeout: 20_000 });
  await first.setOffline(true);
  await phone.getByRole('button', { name: 'Good take' }).click();
  await phone.getByRole('button', { name: 'No good' }).click();
  await expect(phone.getByText(waits)).toBeVisible();
  await killBrowser(first, folder);

  const second = await openPhone();
  try {
    await second.setOffline(true);
    const again = await second.newPage();
    await again.goto(`${DEMO}/log/take`);
    await expect(again.getByText(waits)).toBeVisible({ timeout: 20_000 });
    await page.reload();
    await expect(takesOn(page)).toHaveCount(before);
    await second.setOffline(false);
    await expect(again.getByText('Everything has been sent.')).toBeVisible({ timeout: 20_000 });
    await again.goto(`${DEMO}/log`);
    await expect(takesOn(again)).toHaveCount(before + 2);
    await expect(takesOn(again).nth(0)).toHaveText(/: no good/);
    await expect(takesOn(again).nth(1)).toHaveText(/: good/);
  } finally {
    await second.close();
  }
});
