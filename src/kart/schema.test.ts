import { mkdirSync, readFileSync, writeFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { expect, test } from 'vitest';
import { jsonSchema } from './index.ts';

const file = fileURLToPath(new URL('../../data/schema/kart.schema.json', import.meta.url));
const text = `${JSON.stringify(jsonSchema(), null, 2)}\n`;

test('the shipped JSON Schema is the one that the validator gives', () => {
  if (process.env.UPDATE_SCHEMA === '1') {
    mkdirSync(fileURLToPath(new URL('.', `file://${file}`)), { recursive: true });
    writeFileSync(file, text);
  }
  expect(
    readFileSync(file, 'utf8') === text,
    'data/schema/kart.schema.json is stale: run UPDATE_SCHEMA=1 npx vitest run src/kart/schema.test.ts and commit it',
  ).toBe(true);
});

test('the schema knows the keys of a part and refuses others', () => {
  const schema = JSON.stringify(jsonSchema());
  for (const key of ['behind one of', 'take off', 'opened by', 'second look', 'torque'])
    expect(schema).toContain(JSON.stringify(key));
  expect(schema).toContain('"additionalProperties":false');
});
