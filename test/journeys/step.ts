/** What is at hand on the work sheet: the step that comes next lies beneath it already, out of sight. */
import type { Page } from 'playwright-core';

const AT_HAND = ':not(.beneath) > ';

/** The step, or what stands in its place when there is none. */
export const atHand = (page: Page) => page.locator(`${AT_HAND}.step`);
export const stepCard = (page: Page) => page.locator(`${AT_HAND}article.step`);
export const heading = (page: Page) => page.locator(`${AT_HAND}.step h1`);
export const readingField = (page: Page) => stepCard(page).getByLabel('What you read');
/** What says that it is done. */
export const done = (page: Page) => page.locator(`${AT_HAND}.step .answers .main`);
