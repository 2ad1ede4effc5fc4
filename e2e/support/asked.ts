import type { Page } from '@playwright/test';

/** The civil date so many days ago, YYYY-MM-DD. */
export function daysAgo(days: number): string {
  const day = new Date(Date.now() - days * 86_400_000);
  const two = (n: number) => String(n).padStart(2, '0');
  return `${day.getFullYear()}-${two(day.getMonth() + 1)}-${two(day.getDate())}`;
}

/** In the sheet of a new visit: a skin test, read and clear, and nothing to tell. */
export async function asked(page: Page): Promise<void> {
  await page.getByLabel('Day of the last skin test').fill(daysAgo(5));
  await page.locator('label', { hasText: 'Read, and clear' }).click();
  await page.locator('label', { hasText: 'All asked' }).click();
}
