/** What is due, the plan, the judgement, the record: the questions of the bench. */
import { type Command, InvalidArgumentError } from 'commander';
import { Refusal } from '../../app/index.ts';
import type { FactKind } from '../../book/index.ts';
import type { PlanWindow } from '../../prep/index.ts';
import { EXIT, fail } from '../exit.ts';
import { dueText, factsText, fitText, inWords } from '../print/lists.ts';
import { differenceText, planShort, planText } from '../print/plan.ts';
import { wrap } from '../print/wrap.ts';
import { type Common, onKart, type Session, session, signed } from '../session.ts';
import { typedTime } from '../when.ts';
import type { World } from '../world.ts';
import { type Writing, write } from './log.ts';

type Ends = (code: number) => void;
type Asking = Common & {
  readonly minutes?: number;
  readonly window?: readonly PlanWindow[];
  readonly people?: number;
  readonly needs?: boolean;
  readonly since?: string;
  readonly short?: boolean;
};

export function addWork(program: Command, world: World, ends: Ends): void {
  forEvent(onKart(program.command('plan')))
    .description('what to do next on the kart, in order')
    .option('--minutes <n>', 'the time there is, minutes; what does not fit is named', positive)
    .option(
      '--window <minutes[@time]>',
      'one of several times there are, one after the other: --window 180 --window 300@2026-12-05T08:00',
      windowOf,
    )
    .option('--people <n>', 'who works on the kart, 1 to 3', positive)
    .option('--needs', 'with how much time each thing left out would enter, however many; takes some seconds')
    .option('--since <time>', 'what this plan does otherwise than the plan of that moment')
    .option('--short', 'one line a step')
    .addHelpText(
      'after',
      '\nExample:\n  kartwright plan --demo --minutes 180\n  kartwright plan --demo --people 2 --window 180 --window 300\n',
    )
    .action((options: Asking) =>
      session(world, options, 'ask', async on => {
        const { minutes, window: windows, people, needs } = options;
        const ask = {
          ...asked(on, options),
          ...(minutes === undefined ? {} : { minutes }),
          ...(windows === undefined ? {} : { windows }),
          ...(people === undefined ? {} : { people }),
          ...(needs ? { needs } : {}),
        };
        if (options.since !== undefined) {
          const otherwise = await on.app.replan(on.kart, typedTime(options.since), ask);
          return world.out(options.json ? `${JSON.stringify(otherwise)}\n` : differenceText(otherwise));
        }
        const plan = await on.app.plan(on.kart, ask);
        // Whether it may run belongs beside the work that is left: a script must not have to ask twice.
        const { verdict } = await on.app.fitness(on.kart, asked(on, options));
        if (options.json) world.out(`${JSON.stringify({ ...plan, verdict })}\n`);
        else world.out(options.short ? planShort(plan) : planText(plan));
      }),
    );

  forEvent(onKart(program.command('due')))
    .description('what is due before the next event, and why')
    .addHelpText('after', '\nExample:\n  kartwright due --demo\n')
    .action((options: Common) =>
      session(world, options, 'ask', async on => {
        const due = await on.app.due(on.kart, asked(on, options));
        world.out(options.json ? `${JSON.stringify(due)}\n` : dueText(due));
      }),
    );

  onKart(program.command('calendar'))
    .description('events ahead and what is due before each, as an iCalendar file (RFC 5545) on standard output')
    .addHelpText('after', '\nExample:\n  kartwright calendar --demo > kart.ics\n')
    .action((options: Common) =>
      session(world, options, 'ask', async ({ app, kart, at }) => {
        const { calendarOf } = await import('../../app/index.ts');
        const calendar = await calendarOf(app, kart, at === undefined ? {} : { at });
        world.out(options.json ? `${JSON.stringify({ calendar })}\n` : calendar);
      }),
    );

  forEvent(onKart(program.command('fit')))
    .description('what stands against running; exit code 0 fit, 1 not fit, 2 not known, 3 error')
    .addHelpText('after', '\nExample:\n  kartwright fit --demo || echo "do not run"\n')
    .action((options: Common) =>
      session(world, options, 'ask', async on => {
        const fit = await on.app.fitness(on.kart, asked(on, options));
        world.out(options.json ? `${JSON.stringify(fit)}\n` : fitText(fit));
        ends(fit.verdict === 'fit' ? EXIT.done : fit.verdict === 'not fit' ? EXIT.notFit : EXIT.notKnown);
      }),
    );

  addRelease(program, world);
  addRecord(program, world);
}

function addRelease(program: Command, world: World): void {
  type Signing = Writing & { readonly signer: string; readonly statement?: string };
  forEvent(onKart(program.command('release')))
    .description('a person signs the kart as the record shows it, with what stands open')
    .requiredOption('--signer <name>', 'who signs; only a person does')
    .option('--statement <text>', 'what the signer states')
    .option('--by <name>', 'who enters it, if not the signer')
    .option('--sure', 'sign although the record stands against it; the verdict goes into the release')
    .addHelpText('after', '\nExample:\n  kartwright release --signer "R. Vale" --statement "walked round twice"\n')
    .action((options: Signing) =>
      session(world, options, 'write', async ({ app, kart, at }) => {
        const { signer, statement, event, by, sure } = options;
        const done = await app.release(kart, {
          signer,
          ...(statement === undefined ? {} : { statement }),
          ...(event === undefined ? {} : { event }),
          ...(by === undefined ? {} : { by }),
          ...(at === undefined ? {} : { at }),
          ...(sure ? { sure } : {}),
        });
        if (done.kind === 'refused') throw new Refusal(done.problems);
        if (options.json) world.out(`${JSON.stringify({ facts: done.facts })}\n`);
        else for (const fact of done.facts) world.out(wrap(`recorded ${fact.id}  ${inWords(fact)}`));
      }),
    );
}

function addRecord(program: Command, world: World): void {
  type Listing = Common & {
    readonly kind?: string[];
    readonly about?: string;
    readonly from?: string;
    readonly last?: number;
  };
  onKart(program.command('facts'))
    .description('the record, oldest first; what was struck stays to be seen')
    .option('--kind <kind...>', 'only these kinds of fact')
    .option('--about <name>', 'only facts about this part, joint or item')
    .option('--from <time>', 'only what happened since')
    .option('--last <n>', 'only the newest so many', positive)
    .addHelpText('after', '\nExample:\n  kartwright facts --demo --about "rear hub left" --last 5\n')
    .action((options: Listing) =>
      session(world, options, 'ask', async ({ app, kart, at }) => {
        const lines = await app.facts(kart, {
          ...(at === undefined ? {} : { at }),
          ...(options.kind === undefined ? {} : { kinds: await Promise.all(options.kind.map(factKind)) }),
          ...(options.about === undefined ? {} : { about: options.about }),
          ...(options.from === undefined ? {} : { from: typedTime(options.from) }),
          ...(options.last === undefined ? {} : { last: options.last }),
        });
        world.out(options.json ? `${JSON.stringify({ facts: lines })}\n` : factsText(lines));
      }),
    );

  signed(onKart(program.command('strike')))
    .description('strike a fact that was wrong; it stays to be seen and counts no more')
    .argument('<fact>', 'id of the fact, as `facts` lists it')
    .requiredOption('--why <text>', 'why it was wrong')
    .addHelpText('after', '\nExample:\n  kartwright strike demo-0042 --why "wrong corner"\n')
    .action((fact: string, options: Writing & { readonly why: string }) =>
      session(world, options, 'write', on => write(world, on, [{ kind: 'struck', fact, why: options.why }], options)),
    );
}

const forEvent = (command: Command): Command =>
  command.option('--event <name>', 'which event it is for (default: the next one)');

const asked = ({ at }: Session, { event }: Common) => ({
  ...(at === undefined ? {} : { at }),
  ...(event === undefined ? {} : { event }),
});

async function factKind(text: string): Promise<FactKind> {
  const { FACT_KINDS } = await import('../../book/index.ts');
  const kind = FACT_KINDS.find(one => one === text || one.replace(' ', '-') === text);
  return (
    kind ?? fail('wrong shape', '--kind', `Expected a kind of fact, got "${text}".`, `Kinds: ${FACT_KINDS.join(', ')}.`)
  );
}

/** `180`, or `300@2026-12-05T08:00` for one that begins then; each `--window` adds one. */
function windowOf(text: string, before: readonly PlanWindow[] | undefined): readonly PlanWindow[] {
  const [minutes = '', from] = text.split('@');
  return [...(before ?? []), { minutes: positive(minutes), ...(from === undefined ? {} : { from: typedTime(from) }) }];
}

function positive(text: string): number {
  const value = Number(text);
  if (/^\d+(\.\d+)?$/.test(text) && value > 0) return value;
  throw new InvalidArgumentError('Expected a number above 0, like 180.');
}
