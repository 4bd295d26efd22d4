import { expect, test } from '@playwright/test';
import { DEMO, expectNoAxeViolations, expectNoSidewaysScroll } from './pages';

const ROOM = `${DEMO}/safety`;

test('a line is signed with a take, its caution becomes a caption that the browser reads, and the gate yields to a name and a reason only', async ({ page, request }) => {
  await page.goto(ROOM);
  await expectNoAxeViolations(page);
  await page.getByRole('link', { name: 'Stuck pistons' }).first().click();
  await expect(page.getByRole('heading', { name: /2 things block this episode/ })).toBeVisible();
  await expect(page.getByText(/tasks of this episode are not done: /)).toBeVisible();

  const line = page.getByRole('listitem').filter({ hasText: 'On screen Air throws a piston hard.' });
  await line.getByRole('button', { name: /^Sign/ }).click();
  await page.getByLabel('Take', { exact: true }).fill('cut 1');
  await page.getByLabel('Timecode').fill('00:02:05:30');
  await line.getByRole('button', { name: 'Sign', exact: true }).click();
  await expect(line.getByRole('alert')).toContainText('Nobody has signed this.');
  await expect(line.getByRole('alert')).toContainText('has 30 frames; at 25 they go to 24');
  await page.getByLabel('Who signs').selectOption({ label: 'Marta' });
  await page.getByLabel('Timecode').fill('00:02:05:05');
  await expectNoAxeViolations(page);
  await line.getByRole('button', { name: 'Sign as Marta' }).click();
  await expect(line).toContainText('In a take');
  await expect(line).toContainText('cut 1 at 00:02:05:05');

  const file = await request.get(`${ROOM}/episodes/ep-stuck-pistons/captions`);
  expect(file.headers()['content-type']).toContain('text/vtt');
  // Chromium's own parser of the W3C format reads it.
  const cues = await page.evaluate(async (text) => {
    const video = document.createElement('video');
    const track = document.createElement('track');
    track.src = `data:text/vtt,${encodeURIComponent(text)}`;
    track.default = true;
    video.append(track);
    document.body.append(video);
    track.track.mode = 'showing';
    await new Promise((resolve, reject) => {
      track.addEventListener('load', resolve);
      track.addEventListener('error', reject);
    });
    const read = [...(track.track.cues ?? [])].map((cue) => ({ start: cue.startTime, isLongEnough: cue.endTime - cue.startTime >= 3, text: 'text' in cue ? cue.text : '' }));
    video.remove();
    return read;
  }, await file.text());
  expect(cues).toContainEqual({ start: 125.2, isLongEnough: true, text: 'Air throws a piston hard. Pad in,\nhands and faces out of line.' });
  expect(cues.length).toBeGreaterThan(1);
  expect(cues.filter(({ isLongEnough }) => !isLongEnough)).toEqual([]);
  expect(cues.map(({ start }) => start)).toEqual(cues.map(({ start }) => start).toSorted((a, b) => a - b));

  await page.goto(`${ROOM}/episodes/ep-threads`);
  await page.getByText('Override the gate').click();
  await page.getByRole('button', { name: 'Override and sign' }).click();
  await expect(page.getByText('Nobody has signed this.')).toBeVisible();
  await page.getByLabel('Who overrides it').selectOption({ label: 'Joan' });
  await page.getByLabel(/^Why, in spite of/).fill('shown to the club only, from a laptop');
  await page.getByRole('button', { name: 'Override and sign' }).click();
  await expect(page.getByText(/Overridden by Joan, .*shown to the club only/)).toBeVisible();
  await expect(page.getByText(/^cleared, released/)).toBeVisible();
});

test('hazards are found with their reason, one is taken out on record, an import without a source is refused, and every page fits a phone', async ({ page }) => {
  await page.setViewportSize({ width: 320, height: 700 });
  await page.goto(`${ROOM}/tasks/task-caliper-pistons`);
  await expect(page.getByText('Because: compressed air into a caliper or cylinder')).toBeVisible();
  await page.getByLabel('What to do').selectOption('hazard-removed');
  await page.getByLabel('Hazard', { exact: true }).selectOption({ label: 'Noise' });
  await page.getByLabel('Who says so').selectOption({ label: 'Dilip' });
  await page.getByLabel('Why').fill('the compressor stands in the yard that day');
  await page.getByRole('button', { name: 'Sign', exact: true }).click();
  await expect(page.getByRole('heading', { name: 'Taken out by a person' })).toBeVisible();
  await expect(page.getByText(/Dilip.*the compressor stands in the yard/)).toBeVisible();
  await expectNoAxeViolations(page);
  await expectNoSidewaysScroll(page);

  await page.goto(`${ROOM}/hazards`);
  await page.getByText('Take in hazards as text').click();
  await page.getByLabel('Start from').selectOption({ label: 'Noise' });
  const text = page.getByLabel('The hazard as text');
  await text.fill((await text.inputValue()).replace(/"sources": \[[^\]]*\]/, '"sources": []'));
  await page.getByRole('button', { name: 'Take it in' }).click();
  await expect(page.getByText('“Noise” names no source.')).toBeVisible();
  expect(await text.inputValue()).toContain('"sources": []');
  await expectNoAxeViolations(page);
  await expectNoSidewaysScroll(page);

  for (const address of [ROOM, `${ROOM}/episodes/ep-three-rims`]) {
    await page.goto(address);
    await expectNoSidewaysScroll(page);
  }
  await page.goto(ROOM);
  await page.getByText(/^Yearly review of .* 8 never read/).click();
  const read = page.getByRole('button', { name: /^Read: it still holds/ }).first();
  await read.click();
  await expect(page.getByText('Nobody has read it.')).toBeVisible();
  await page.getByLabel('Who has read').selectOption({ label: 'Joan' });
  await read.click();
  await expect(page.getByText(/^Yearly review of .* 7 never read/)).toBeVisible();
  await expectNoAxeViolations(page);
  await page.getByRole('button', { name: 'Undo' }).click();
  await expect(page.getByText(/^Yearly review of .* 8 never read/)).toBeVisible();
  await page.getByRole('heading', { name: 'Briefs for the next sessions' }).locator('xpath=..').getByRole('link').first().click();
  await expect(page.getByRole('heading', { name: /^Brief:/ })).toBeVisible();
  await expectNoAxeViolations(page);
  await expectNoSidewaysScroll(page);
});
