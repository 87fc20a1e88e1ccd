import { expect, test } from 'vitest';
import { labelsPage } from './labels.ts';

const label = {
  what: 'part',
  name: 'hub <b>"left" & co',
  under: 'axle',
  kart: '41',
  url: 'http://a/#/part/x',
} as const;
const codes = (text: string) => ({ size: text.length, path: 'M4 4h7v1h-7z' });

test('names are text on the page, whatever signs they hold', () => {
  const page = labelsPage([label], codes, [['Kart', '<41>']]);
  expect(page).toContain('<b>hub &lt;b&gt;&quot;left&quot; &amp; co</b>');
  expect(page).toContain('<dd>&lt;41&gt;');
  expect(page).toContain(`viewBox="0 0 ${label.url.length} ${label.url.length}"`);
});

test('each label stands on the page once, a box by its own words', () => {
  const page = labelsPage([label, { ...label, what: 'box' }], codes, []);
  expect(page.match(/<li>/g)).toHaveLength(2);
  expect(page).toContain('<small>Spares, kart 41</small>');
});
