import type { Page } from '@playwright/test';
import { layOutAll } from './stepwellPage.ts';

/** Least width and height of a target in CSS pixels: WCAG 2.2, success criterion 2.5.8, its exceptions not used. */
const least = 24;

/** Targets that are narrower or lower than 24 px, other places to hit for the same counted: a line each. */
export async function findSmallTargets(page: Page): Promise<string[]> {
  await layOutAll(page);
  return page.evaluate((least) => {
    const selector = 'a[href], button, input, select, textarea, summary, [role="button"], [role="slider"]';
    // A radio button or a file field is hit through its label too; a handle through the chart it stands in.
    const placesOf = (element: HTMLElement): DOMRect[] => [
      ...element.getClientRects(),
      ...[...((element as HTMLInputElement).labels ?? [])].flatMap((label) => [...label.getClientRects()]),
      ...(element.closest('.figure-moves')?.getClientRects() ?? []),
    ];
    const isSmall = (element: HTMLElement): boolean =>
      !placesOf(element).some(({ width, height }) => Math.min(width, height) >= least);
    const lineOf = (element: HTMLElement): string => {
      const { width, height } = element.getBoundingClientRect();
      const name = element.getAttribute('aria-label') ?? element.textContent?.trim().slice(0, 40);
      return `${element.tagName.toLowerCase()}.${element.className} “${name}” ${width.toFixed(1)} × ${height.toFixed(1)}`;
    };
    return [...document.querySelectorAll<HTMLElement>(selector)]
      .filter((element) => element.checkVisibility({ visibilityProperty: true }))
      .filter((element) => element.getClientRects().length > 0 && isSmall(element))
      .map(lineOf);
  }, least);
}
