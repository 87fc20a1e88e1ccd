/** What is at hand on the work sheet: the step that comes next lies beneath it already, out of sight. */
import type { Page } from 'playwright-core';

const AT_HAND = ':not(.beneath) > ';

export const stepCard = (page: Page) => page.locator(`${AT_HAND}article.step`);
export const heading = (page: Page) => page.locator(`${AT_HAND}.step h1`);
export const readingField = (page: Page) => stepCard(page).getByLabel('What you read');
/** What says that it is done. */
export const done = (page: Page) => page.locator(`${AT_HAND}.step .answers .main`);
