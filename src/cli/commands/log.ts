/** `log`: every kind of fact, typed with options or handed in as JSON. */
import type { Command } from 'commander';
import { type AlikeAnswer, Refusal } from '../../app/index.ts';
import type { Fact } from '../../book/index.ts';
import { fail } from '../exit.ts';
import { TYPED } from '../kinds.ts';
import { inWords } from '../print/lists.ts';
import { wrap } from '../print/wrap.ts';
import { type Common, inFile, onKart, personOf, type Session, session, signed } from '../session.ts';
import { type Given, noFile, payloadOf } from '../typed.ts';
import type { World } from '../world.ts';

export type Writing = Common & { readonly sure?: boolean };

export function addLog(program: Command, world: World): void {
  const log = sure(signed(onKart(program.command('log'))))
    .description('write what happened into the book; alone, reads facts as JSON from standard input')
    .addHelpText(
      'after',
      `\nExamples:\n  kartwright log ran --minutes 12 --laps 10\n  echo '{"kind":"note","text":"new chain"}' | kartwright log\n`,
    )
    .argument('[kind]', 'what happened; without it, JSON is read')
    .action(async (kind: string | undefined, _, command: Command) => {
      if (kind !== undefined)
        fail(
          'wrong shape',
          'log',
          `Expected a kind of fact, got "${kind}".`,
          `Kinds: ${Object.keys(TYPED)
            .map(k => k.replace(' ', '-'))
            .join(', ')}.`,
        );
      const options = command.optsWithGlobals<Writing>();
      await session(world, options, 'write', async on => write(world, on, await fromInput(world), options));
    });
  for (const [kind, typed] of Object.entries(TYPED)) addKind(log, world, kind, typed);
}

function addKind(log: Command, world: World, kind: string, typed: (typeof TYPED)[keyof typeof TYPED]): void {
  const command = log.command(kind.replace(' ', '-')).description(typed.about);
  if (typed.subject)
    command.argument(
      typed.subject.key === 'changes' || typed.subject.key === 'celsius'
        ? `<${typed.subject.key}...>`
        : kind === 'failed'
          ? `[${typed.subject.key}]`
          : `<${typed.subject.key}>`,
      typed.subject.help,
    );
  for (const option of typed.options) command.option(option.flag, option.help);
  sure(signed(onKart(command)))
    .addHelpText('after', `\nExample:\n  ${typed.example}\n`)
    .action(async (...args: unknown[]) => {
      const self = args.at(-1) as Command;
      const options = self.optsWithGlobals<Writing>();
      const subject = typed.subject && args[0] !== undefined ? [args[0]].flat().map(String) : [];
      const given: Given[] = typed.options.flatMap((option, i) => {
        const value: unknown = self.getOptionValue(self.options[i]?.attributeName() ?? '');
        return value === undefined ? [] : [{ option, value: value === true ? true : String(value) }];
      });
      const about = kind === 'kart filed' ? await ofItsKart(world, options, subject[0]) : options;
      await session(world, about, 'write', async on => {
        const ready = await payloadOf(kind, typed, subject, given, { world, app: on.app });
        if (!ready.ok) throw new Refusal(ready.problems);
        if (kind === 'kart filed' && (await isFiled(world, on, ready.payload.text, options))) return;
        const payload = kind === 'failed' ? await talked(world, on, ready.payload, options) : ready.payload;
        await write(world, on, [payload], options);
      });
    });
}

/** A kart file says itself which kart it is of. */
async function ofItsKart(world: World, options: Writing, path = ''): Promise<Writing> {
  if (options.kart !== undefined || options.demo) return options;
  const text = await world.readFile(path);
  if (text === undefined) throw new Refusal([noFile(path)]);
  const beside = await world.scratch();
  const filed = await beside.fileKart(text, { by: personOf(world, options) });
  await beside.close();
  if (filed.kind === 'refused') throw inFile(path, filed.problems);
  return { ...options, kart: filed.kart };
}

/** A kart file that is in force, perhaps since `--kart FILE` filed it a moment ago, is not filed again: said where it stands. */
async function isFiled(world: World, { app, kart }: Session, text: unknown, { json }: Writing): Promise<boolean> {
  if (!(await app.karts()).some(({ name }) => name === kart)) return false;
  const [last] = await app.facts(kart, { kinds: ['kart filed'], last: 1 });
  if (last?.fact.kind !== 'kart filed' || last.fact.text !== text) return false;
  world.out(
    json ? `${JSON.stringify({ facts: [last.fact] })}\n` : wrap(`in force as ${last.fact.id}  ${inWords(last.fact)}`),
  );
  return true;
}

/** At a terminal what a failure was is asked for, where it was not said in full. */
async function talked(
  world: World,
  { app, kart }: Session,
  said: Readonly<Record<string, unknown>>,
  { json }: Writing,
): Promise<Readonly<Record<string, unknown>>> {
  if (!world.ask || json || (said.part !== undefined && said.how !== undefined)) return said;
  const { talkOfFailure } = await import('../failure-talk.ts');
  const facts = (await app.facts(kart)).map(({ fact }) => fact);
  return talkOfFailure(world.ask, { kart: await app.kart(kart), state: await app.state(kart), facts }, said);
}

export const sure = (command: Command): Command =>
  command.option('--sure', 'asked again, it is so: a value far outside is kept as said');

/** One fact a line, or one list of facts. */
async function fromInput(world: World): Promise<readonly unknown[]> {
  const text = (await world.stdin())?.trim();
  if (!text)
    return fail(
      'nothing to record',
      'standard input',
      'Expected a fact as one line of JSON, got nothing.',
      'Pipe one in, or name a kind: kartwright log --help lists them.',
    );
  if (text.startsWith('[')) return parsed(text, 'standard input') as readonly unknown[];
  return text
    .split('\n')
    .filter(line => line.trim() !== '')
    .map((line, i) => parsed(line, `standard input, line ${i + 1}`));
}

function parsed(text: string, where: string): unknown {
  try {
    return JSON.parse(text);
  } catch (error) {
    const why = error instanceof Error ? error.message : String(error);
    return fail(
      'wrong shape',
      where,
      `Expected JSON, got "${text.slice(0, 40)}" (${why}).`,
      'Write one fact a line: {"kind": "note", "text": "..."}.',
    );
  }
}

/** Records, and says what was recorded. */
export async function write(
  world: World,
  { app, kart, at }: Session,
  payloads: readonly unknown[],
  options: Writing,
): Promise<void> {
  const done = await app.record(kart, payloads, {
    by: personOf(world, options),
    ...(at === undefined ? {} : { at }),
    ...(options.sure ? { sure: true } : {}),
  });
  if (done.kind === 'refused') throw new Refusal(done.problems);
  const { facts, judgements = [] } = done;
  const alike = await elseOf(world, app, facts);
  if (options.json) {
    const more = { ...(judgements.length > 0 && { judgements }), ...(alike.length > 0 && { alike }) };
    world.out(`${JSON.stringify({ facts, ...more })}\n`);
    return;
  }
  for (const fact of facts) {
    world.out(wrap(`recorded ${fact.id}  ${inWords(fact)}`));
    for (const judged of judgements.filter(one => one.fact === fact.id))
      for (const line of [...judged.say, judged.move ?? '', ...judged.notes])
        if (line !== '') world.out(wrap(line, '  '));
  }
  if (alike.length === 0) return;
  const { alikeText } = await import('../print/alike.ts');
  for (const one of alike) world.out(alikeText(one));
}

/** What else of this kind there is, at once with what failed. */
async function elseOf(world: World, app: Session['app'], facts: readonly Fact[]): Promise<readonly AlikeAnswer[]> {
  const failed = facts.filter(({ kind }) => kind === 'failed');
  if (failed.length === 0) return [];
  const [{ whatElse }, texts] = await Promise.all([import('../../app/index.ts'), world.riskTexts()]);
  return Promise.all(failed.map(({ id, kart }) => whatElse(app, kart, { fact: id }, texts)));
}
