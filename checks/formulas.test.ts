import { readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { expect, it } from 'vitest';
import { subjects } from '../src/numbers/index.ts';
import { formulas } from './formulas.ts';
import type { Row } from './rows.ts';

const folder = fileURLToPath(new URL('./rows/', import.meta.url));
const file = fileURLToPath(new URL('../docs/formulas.md', import.meta.url));

it('docs/formulas.md says what the cards and rows say (UPDATE_FORMULAS=1 writes it anew)', () => {
  const rows = readdirSync(folder).flatMap(name => JSON.parse(readFileSync(`${folder}${name}`, 'utf8')) as Row[]);
  const text = formulas(subjects, rows);
  expect(text.length).toBeGreaterThan(1000);
  if (process.env.UPDATE_FORMULAS) writeFileSync(file, text);
  expect(readFileSync(file, 'utf8')).toBe(text);
});
