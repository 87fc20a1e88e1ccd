/** One number asked alone: JSON in, JSON or sentences out. A bare problem is asked the same way and answers in JSON. */

import { z } from 'zod';
import {
  askWithKart,
  type BareProblem,
  bareProblems,
  fromKart,
  Refusal,
  type Said,
  sentence,
} from '../../app/index.ts';
import { suggest } from '../../kart/index.ts';
import { type Answer, type Problems, type Subject, subjects } from '../../numbers/index.ts';
import { fail } from '../exit.ts';
import { cardOf, cardText } from '../print/card.ts';
import { heading, wrap } from '../print/wrap.ts';
import { session } from '../session.ts';
import { ownFigure } from '../units.ts';
import type { World } from '../world.ts';
import type { Asked } from './calc.ts';

/** @param name of the subject; undefined lists them */
export async function calc(world: World, name: string | undefined, asked: Asked): Promise<void> {
  const bare = await bareProblems();
  if (name === undefined) {
    list(world, bare, asked);
    return;
  }
  const subject = subjects.find(one => one.name === name);
  const one = subject ?? bare.find(problem => problem.name === name) ?? unknown(name, bare);
  if (asked.schema) world.out(`${JSON.stringify(z.toJSONSchema(one.schema, { io: 'input' }), null, 2)}\n`);
  else if (asked.explain) 'card' in one ? explain(world, one, asked) : explainBare(world, one, asked);
  else {
    const input = await question(world, asked, one);
    if ('card' in one) answer(world, one, input, asked, await saidByKart(world, one, asked));
    else world.out(`${JSON.stringify(taken(one.ask(input)))}\n`);
  }
}

function list(world: World, bare: readonly BareProblem[], { json }: Asked): void {
  const lines = (of: readonly Named[]): readonly Named[] => of.map(({ name, title }) => ({ name, title }));
  if (json) {
    world.out(`${JSON.stringify({ subjects: lines(subjects), problems: lines(bare) })}\n`);
    return;
  }
  const widest = Math.max(...[...subjects, ...bare].map(one => one.name.length));
  const print = ({ name, title }: Named): void => world.out(wrap(title, `${name.padEnd(widest)}  `));
  subjects.forEach(print);
  world.out(heading('bare problems, JSON in and out'));
  bare.forEach(print);
}
type Named = { readonly name: string; readonly title: string };

function unknown(name: string, bare: readonly BareProblem[]): never {
  const names = [...subjects, ...bare].map(one => one.name);
  const near = suggest(name, names);
  return fail(
    'wrong shape',
    'calc',
    `Expected a subject, got "${name}".`,
    `${near === undefined ? '' : `Did you mean "${near}"? `}Subjects: ${names.join(', ')}.`,
  );
}

type Asking = Pick<BareProblem, 'example' | 'xml'>;

async function question(world: World, { input }: Asked, subject: Asking): Promise<unknown> {
  const text = input ?? (await world.stdin());
  const example = `For example --input '${JSON.stringify(subject.example)}'.`;
  if (!text?.trim()) return fail('wrong shape', 'calc', 'Expected the question as JSON, got nothing.', example);
  if (subject.xml !== undefined && text.trimStart().startsWith('<')) return { [subject.xml]: text };
  try {
    return JSON.parse(text);
  } catch {
    return fail('wrong shape', 'calc', `Expected the question as JSON, got "${text.slice(0, 40)}".`, example);
  }
}

function answer(world: World, subject: Subject, input: unknown, { json }: Asked, said: Said): void {
  const asked = askWithKart(subject, input, said);
  const answered = taken(asked.answered);
  const of = Object.entries(asked.taken).map(([path, text]) => `${path} ${text}`);
  if (json) world.out(`${JSON.stringify(of.length === 0 ? answered : { ...answered, fromKart: asked.taken })}\n`);
  else world.out(answerText(answered) + (of.length === 0 ? '' : wrap(of.join(', '), 'from the kart: ')));
}

/** What the kart named says of it; nothing where none is named. */
async function saidByKart(world: World, subject: Subject, asked: Asked): Promise<Said> {
  if (asked.kart === undefined && !asked.demo) return {};
  return session(world, asked, 'ask', async ({ app, kart, at }) =>
    fromKart(subject, await app.kart(kart, at === undefined ? {} : { at })),
  );
}

/** The answer, when the question was taken. */
function taken<T extends object>(answered: T | Problems): T {
  if (!isRefused(answered)) return answered;
  throw new Refusal(
    answered.problems.map(({ path, expected, got, remedy }) => ({
      code: 'reading',
      where: path,
      message: `Expected ${expected}, got ${got}.`,
      remedy: sentence(remedy),
    })),
  );
}

const isRefused = (answered: object): answered is Problems => 'kind' in answered && answered.kind === 'problems';

function answerText({ figures, say, notes }: Answer): string {
  const widest = Math.max(0, ...Object.keys(figures).map(name => name.length));
  const lines = Object.entries(figures).map(([name, figure]) => `  ${name.padEnd(widest)}  ${ownFigure(figure)}\n`);
  return (
    say.map(sentence => wrap(sentence)).join('') + lines.join('') + notes.map(note => wrap(note, 'note: ')).join('')
  );
}

function explain(world: World, subject: Subject, { json }: Asked): void {
  world.out(json ? `${JSON.stringify(cardOf(subject))}\n` : cardText(subject));
}

function explainBare(world: World, { title, how, sources }: BareProblem, { json }: Asked): void {
  if (json) {
    world.out(`${JSON.stringify({ title, how, sources })}\n`);
    return;
  }
  world.out(wrap(`${title}.`) + how.map(sentence => wrap(sentence)).join('') + heading('sources'));
  for (const source of sources) world.out(wrap(source, '  - '));
}
