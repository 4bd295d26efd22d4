import { expect, test } from '@playwright/test';
import { DEMO, expectNoAxeViolations, expectNoSidewaysScroll } from './pages';

const PAGES = [
  '/', DEMO, `${DEMO}/now`, `${DEMO}/build`, `${DEMO}/plans`, `${DEMO}/history`, `${DEMO}/progress/odds`, `${DEMO}/progress/review`, `${DEMO}/records`, `${DEMO}/records/series`,
  `${DEMO}/records/tasks`, `${DEMO}/records/tasks/new`, `${DEMO}/records/tasks/task-studs`, `${DEMO}/records/sessions/new`, `${DEMO}/records/parts/part-frame`,
  '/s/there-is-no-such-series',
];

for (const path of PAGES) {
  test(`${path} has no finding of axe in light and dark, and fits 320 px`, async ({ page }) => {
    for (const colorScheme of ['light', 'dark'] as const) {
      await page.emulateMedia({ colorScheme });
      await page.goto(path);
      await expect(page.getByRole('heading', { level: 1 })).toHaveCount(1);
      await expectNoAxeViolations(page);
    }
    await page.setViewportSize({ width: 320, height: 700 });
    await page.goto(path);
    await expectNoSidewaysScroll(page);
  });
}
