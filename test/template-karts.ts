/** The three templates as shipped, each read as a kart of its own; and any kart file over them. */
import { readdirSync, readFileSync } from 'node:fs';
import { type Kart, type Library, readKart } from '../src/kart/index.ts';

const data = new URL('../data/', import.meta.url);
const texts = (folder: string): Record<string, string> =>
  Object.fromEntries(
    readdirSync(new URL(`${folder}/`, data))
      .filter(file => file.endsWith('.yaml'))
      .map(file => [file, readFileSync(new URL(`${folder}/${file}`, data), 'utf8')]),
  );
const library: Library = { kinds: texts('kinds'), templates: texts('templates'), rules: texts('rules') };

export function kartFrom(text: string): Kart {
  const read = readKart(`kart: 1\nname: "1"\n${text}`, library);
  if (read.ok) return read.kart;
  throw new Error(read.problems.map(({ message }) => message).join('\n'));
}

export const templateKarts = (): readonly Kart[] =>
  ['six-speed gearbox', 'single-speed direct-drive', 'four-stroke junior'].map(name => kartFrom(`template: ${name}\n`));
