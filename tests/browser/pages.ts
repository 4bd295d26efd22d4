/** What the journeys share: the demo's address, forms filled by label, axe. */
import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { expect, type Page } from '@playwright/test';

const axeSource = readFileSync(createRequire(import.meta.url).resolve('axe-core/axe.min.js'), 'utf8');

export const DEMO = '/s/series-bread-round';

interface Violation {
  readonly id: string;
  readonly help: string;
  readonly nodes: readonly { readonly target: readonly string[] }[];
}

/** WCAG 2.0 to 2.2, levels A and AA, by axe-core; nothing may be found. */
export async function expectNoAxeViolations(page: Page): Promise<void> {
  // A page that is drawn anew gets its title last: without one after a while, the page is at fault.
  await expect(page).toHaveTitle(/./);
  await page.evaluate(axeSource);
  const violations = await page.evaluate(async () => {
    const { axe } = globalThis as unknown as { axe: { run: (options: object) => Promise<{ violations: Violation[] }> } };
    const result = await axe.run({ runOnly: ['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa'] });
    return result.violations.map(({ id, help, nodes }) => ({ id, help, nodes: nodes.map(({ target }) => ({ target: [...target] })) }));
  });
  expect(violations.map(({ id, help, nodes }) => `${id}: ${help}: ${nodes.map((node) => node.target.join(' ')).join(', ')}`)).toEqual([]);
}

/** No page scrolls sideways; a strip may do so inside its own region. */
export async function expectNoSidewaysScroll(page: Page): Promise<void> {
  const overflow = await page.evaluate(() => document.documentElement.scrollWidth - document.documentElement.clientWidth);
  expect(overflow).toBeLessThanOrEqual(0);
}

/** Fills text boxes and lists by their labels, in the order given. */
export async function fillForm(page: Page, values: Readonly<Record<string, string>>): Promise<void> {
  for (const [label, value] of Object.entries(values)) {
    const field = page.getByLabel(label, { exact: true }).first();
    const isList = (await field.evaluate((element) => element.tagName)) === 'SELECT';
    if (isList) await field.selectOption({ label: value });
    else await field.fill(value);
  }
}

/** Presses the page's Re-plan, waits for the draft and accepts it. */
export async function planAndAccept(page: Page): Promise<void> {
  await page.getByRole('button', { name: /^(Re-plan|Make the first plan)$/ }).click();
  const accept = page.getByRole('button', { name: /^Accept plan \d+$/ });
  await expect(accept).toBeVisible({ timeout: 40_000 });
  await accept.click();
  await expect(page.getByRole('heading', { name: /Plan \d+ accepted/ })).toBeVisible();
}
