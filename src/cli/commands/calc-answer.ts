/** One number asked alone: JSON in, JSON or sentences out. */
import { z } from 'zod';
import { Refusal, sentence } from '../../app/index.ts';
import { suggest } from '../../kart/index.ts';
import { type Answer, BIBLIOGRAPHY, type Subject, subjects } from '../../numbers/index.ts';
import { fail } from '../exit.ts';
import { heading, wrap } from '../print/wrap.ts';
import type { World } from '../world.ts';
import type { Asked } from './calc.ts';

/** @param name of the subject; undefined lists them */
export async function calc(world: World, name: string | undefined, asked: Asked): Promise<void> {
  if (name === undefined) {
    list(world, asked);
    return;
  }
  const subject = subjects.find(one => one.name === name) ?? unknown(name);
  if (asked.schema) world.out(`${JSON.stringify(z.toJSONSchema(subject.schema, { io: 'input' }), null, 2)}\n`);
  else if (asked.explain) explain(world, subject, asked);
  else answer(world, subject, await question(world, asked, subject), asked);
}

function list(world: World, { json }: Asked): void {
  const widest = Math.max(...subjects.map(one => one.name.length));
  if (json) world.out(`${JSON.stringify({ subjects: subjects.map(({ name, title }) => ({ name, title })) })}\n`);
  else for (const { name, title } of subjects) world.out(wrap(title, `${name.padEnd(widest)}  `));
}

function unknown(name: string): never {
  const names = subjects.map(one => one.name);
  const near = suggest(name, names);
  return fail(
    'wrong shape',
    'calc',
    `Expected a subject, got "${name}".`,
    `${near === undefined ? '' : `Did you mean "${near}"? `}Subjects: ${names.join(', ')}.`,
  );
}

async function question(world: World, { input }: Asked, subject: Subject): Promise<unknown> {
  const text = input ?? (await world.stdin());
  const example = `For example --input '${JSON.stringify(subject.example)}'.`;
  if (!text?.trim()) return fail('wrong shape', 'calc', 'Expected the question as JSON, got nothing.', example);
  try {
    return JSON.parse(text);
  } catch {
    return fail('wrong shape', 'calc', `Expected the question as JSON, got "${text.slice(0, 40)}".`, example);
  }
}

function answer(world: World, subject: Subject, input: unknown, { json }: Asked): void {
  const answered = subject.ask(input);
  if (answered.kind === 'problems')
    throw new Refusal(
      answered.problems.map(({ path, expected, got, remedy }) => ({
        code: 'reading',
        where: path,
        message: `Expected ${expected}, got ${got}.`,
        remedy: sentence(remedy),
      })),
    );
  world.out(json ? `${JSON.stringify(answered)}\n` : answerText(answered));
}

function answerText({ figures, say, notes }: Answer): string {
  const widest = Math.max(0, ...Object.keys(figures).map(name => name.length));
  const lines = Object.entries(figures).map(([name, { text }]) => `  ${name.padEnd(widest)}  ${text}\n`);
  return (
    say.map(sentence => wrap(sentence)).join('') + lines.join('') + notes.map(note => wrap(note, 'note: ')).join('')
  );
}

function explain(world: World, { title, card }: Subject, { json }: Asked): void {
  const sources = card.sources.map(key => ({ key, ...BIBLIOGRAPHY[key] }));
  if (json) {
    world.out(`${JSON.stringify({ title, ...card, sources })}\n`);
    return;
  }
  world.out(wrap(`${title}. ${card.what}`) + heading('equation') + wrap(card.equation, '  ') + heading('symbols'));
  for (const [symbol, meaning] of Object.entries(card.symbols)) world.out(wrap(meaning, `  ${symbol.padEnd(6)} `));
  world.out(heading('validity') + wrap(card.validity, '  ') + heading('sources'));
  for (const source of sources) world.out(wrap(Object.values(source).map(String).join('; '), '  - '));
}
