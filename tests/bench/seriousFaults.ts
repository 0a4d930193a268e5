/** Serious faults that axe finds on the page as it stands, in words; none is what every view must give. */
import { AxeBuilder } from '@axe-core/playwright';
import type { Page } from '@playwright/test';

export async function seriousFaults(page: Page): Promise<string[]> {
  const { violations } = await new AxeBuilder({ page }).analyze();
  return violations
    .filter(({ impact }) => impact === 'serious' || impact === 'critical')
    .map(({ id, nodes }) => `${id}: ${nodes.map(({ html }) => html).join(' ')}`);
}
