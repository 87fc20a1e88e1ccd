/** One number asked alone: JSON in, JSON or sentences out. */
import type { Command } from 'commander';
import { z } from 'zod';
import { Refusal, sentence } from '../../app/index.ts';
import { suggest } from '../../kart/index.ts';
import { type Answer, BIBLIOGRAPHY, type Subject, subjects } from '../../numbers/index.ts';
import { fail } from '../exit.ts';
import { heading, wrap } from '../print/wrap.ts';
import type { World } from '../world.ts';

type Options = {
  readonly input?: string;
  readonly schema?: boolean;
  readonly explain?: boolean;
  readonly json?: boolean;
};

export function addCalc(program: Command, world: World): void {
  program
    .command('calc')
    .description('one number asked alone; without a subject, lists the subjects')
    .argument('[subject]', 'which number')
    .option('--input <json>', 'the question (default: standard input)')
    .option('--schema', 'print the JSON Schema of the question')
    .option('--explain', 'how the number is worked out, and from which sources')
    .option('--json', 'print JSON')
    .addHelpText('after', '\nExample:\n  kartwright calc rear-track --schema\n')
    .action(async (name: string | undefined, options: Options) => {
      if (name === undefined) {
        list(world, options);
        return;
      }
      const subject = subjects.find(one => one.name === name) ?? unknown(name);
      if (options.schema) world.out(`${JSON.stringify(z.toJSONSchema(subject.schema, { io: 'input' }), null, 2)}\n`);
      else if (options.explain) explain(world, subject, options);
      else answer(world, subject, await question(world, options, subject), options);
    });
}

function list(world: World, { json }: Options): void {
  if (json) world.out(`${JSON.stringify({ subjects: subjects.map(({ name, title }) => ({ name, title })) })}\n`);
  else for (const { name, title } of subjects) world.out(wrap(title, `${name.padEnd(14)}  `));
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

async function question(world: World, { input }: Options, subject: Subject): Promise<unknown> {
  const text = input ?? (await world.stdin());
  const example = `For example --input '${JSON.stringify(subject.example)}'.`;
  if (!text?.trim()) return fail('wrong shape', 'calc', 'Expected the question as JSON, got nothing.', example);
  try {
    return JSON.parse(text);
  } catch {
    return fail('wrong shape', 'calc', `Expected the question as JSON, got "${text.slice(0, 40)}".`, example);
  }
}

function answer(world: World, subject: Subject, input: unknown, { json }: Options): void {
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

function explain(world: World, { title, card }: Subject, { json }: Options): void {
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
