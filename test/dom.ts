/**
 * A page without a browser, for views that are told something between two taps. What a browser draws, sizes and focuses is
 * looked at in the journeys. For files that begin with `@vitest-environment happy-dom`.
 */
import { type ComponentChildren, render } from 'preact';
import { onTestFinished } from 'vitest';

/** What is drawn a moment later stands there. */
export const settled = (ms = 30): Promise<void> => new Promise(done => setTimeout(done, ms));

export type Drawn = {
  /** Draws it, or draws it anew. */
  show(what: ComponentChildren): Promise<void>;
  /** Whether a button reads like this, and whether it can be pressed. */
  button(words: RegExp): 'none' | 'waits' | 'ready';
  press(words: RegExp): Promise<void>;
  type(selector: string, text: string): Promise<void>;
  /** Of a list. */
  choose(selector: string, value: string): Promise<void>;
  value(selector: string): string;
  has(selector: string): boolean;
  text(): string;
  submit(): Promise<void>;
  /** Chooses files. */
  put(selector: string, files: readonly Blob[]): Promise<void>;
  /** Takes a photo with the first field for one. */
  photo(): Promise<void>;
};

export function drawn(): Drawn {
  const page = document.createElement('div');
  document.body.append(page);
  onTestFinished(() => render(null, page));
  const one = <T extends Element = HTMLInputElement>(selector: string): T => {
    const found = page.querySelector(selector);
    if (found === null) throw new Error(`drawn: ${selector} must stand on the page, got ${page.textContent}`);
    return found as T;
  };
  const tell = (to: Element, kind: string): Promise<void> => {
    to.dispatchEvent(new Event(kind, { bubbles: true, cancelable: true }));
    return settled();
  };
  const find = (words: RegExp): HTMLButtonElement | undefined =>
    [...page.querySelectorAll('button')].find(({ textContent }) => words.test(textContent ?? ''));
  const put: Drawn['put'] = (selector, files) => {
    const field = one(selector);
    Object.defineProperty(field, 'files', { value: files, configurable: true });
    return tell(field, 'change');
  };
  return {
    show(what) {
      render(what, page);
      return settled();
    },
    button(words) {
      const found = find(words);
      return found === undefined ? 'none' : found.disabled ? 'waits' : 'ready';
    },
    press(words) {
      const found = find(words);
      if (found === undefined || found.disabled)
        throw new Error(`drawn: ${words} must be a button that can be pressed`);
      return tell(found, 'click');
    },
    type(selector, text) {
      const field = one(selector);
      field.value = text;
      return tell(field, 'input');
    },
    choose(selector, value) {
      const field = one<HTMLSelectElement>(selector);
      field.value = value;
      return tell(field, 'change');
    },
    value: selector => one(selector).value,
    text: () => page.textContent ?? '',
    has: selector => page.querySelector(selector) !== null,
    submit: () => tell(one('form'), 'submit'),
    put,
    photo: () => put('input[type=file]', [new Blob(['x'])]),
  };
}
