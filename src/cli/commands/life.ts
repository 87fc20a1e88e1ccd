/** How long parts last, and a guess of it written down. What is answered stands in the app, fetched when it is asked. */
import type { Command } from 'commander';
import { Refusal } from '../../app/index.ts';
import { numberIn } from '../number.ts';
import { type Common, onKart, personOf, session, signed } from '../session.ts';
import type { World } from '../world.ts';

type Asking = Common & { readonly hours?: string; readonly cap?: string };
type Guessing = Common & {
  readonly half?: string;
  readonly tenth?: string;
  readonly interval?: string;
  readonly why?: string;
};

export function addLife(program: Command, world: World): void {
  const life = onKart(program.command('life'))
    .description(
      'how likely each part fails over the next event at its age; with PART all that is known of how long it lasts',
    )
    .argument('[part]', 'name of the part; left out: all of them, the most likely to fail first')
    .option('--event <name>', 'for this event of the book (default: the next)')
    .option('--hours <n>', 'running hours to reckon over (default: those of the event)')
    .option('--cap <percent>', 'chance of failing over one event that you put up with: 1 %')
    .addHelpText(
      'after',
      `
Examples:
  kartwright life --demo
  kartwright life chain --demo
  kartwright life guess chain --half 30 --tenth 12`,
    )
    .action((part: string | undefined, options: Asking) =>
      session(world, options, 'ask', async ({ app, kart, at }) => {
        const [{ lifeOf, livesAsked }, { lifeText, livesText }] = await Promise.all([
          import('../../app/index.ts'),
          import('../print/life.ts'),
        ]);
        const { event, hours, cap } = options;
        const question = {
          ...(at === undefined ? {} : { at }),
          ...(event === undefined ? {} : { event }),
          ...(hours === undefined ? {} : { hours: numberIn('hours', hours) }),
        };
        const { priors } = await world.riskTexts();
        if (part === undefined) {
          const answer = await livesAsked(app, kart, question, priors);
          world.out(options.json ? `${JSON.stringify(answer)}\n` : livesText(answer));
          return;
        }
        const capped =
          cap === undefined ? {} : { cap: numberIn('cap', cap.replace(/\s*%$/, '')) / (/%$/.test(cap) ? 100 : 1) };
        const answer = await lifeOf(app, kart, part, { ...question, ...capped }, priors);
        world.out(options.json ? `${JSON.stringify(answer)}\n` : lifeText(answer));
      }),
    );

  signed(onKart(life.command('guess')))
    .description('by how many running hours would you expect half of a kind to be gone, and 1 in 10?')
    .argument('<kind>', 'a kind of the kart file: chain')
    .option('--half <hours>', 'half of them are gone by then')
    .option('--tenth <hours>', '1 in 10 is gone by then; up to there you are nearly always safe from it')
    .option('--interval <hours>', 'the service interval of the maker, taken as the hours by which 1 in 10 is gone')
    .option('--why <text>', 'from what you know it')
    .addHelpText('after', '\nExample:\n  kartwright life guess chain --half 30 --tenth 12\n')
    .action((kind: string, _, command: Command) => {
      const options = command.optsWithGlobals<Guessing>();
      return session(world, options, 'write', async ({ app, kart }) => {
        const { half, tenth, interval, why } = options;
        const payload = {
          kind: 'life expected',
          of: kind,
          ...(half === undefined ? {} : { halfHours: numberIn('half', half) }),
          ...(tenth === undefined ? {} : { tenthHours: numberIn('tenth', tenth) }),
          ...(interval === undefined ? {} : { tenthHours: numberIn('interval', interval), interval: true }),
          ...(why === undefined ? {} : { why }),
        };
        const done = await app.record(kart, [payload], { by: personOf(world, options) });
        if (done.kind === 'refused') throw new Refusal(done.problems);
        world.out(
          options.json
            ? `${JSON.stringify({ facts: done.facts })}\n`
            : `Written down of ${kind}. It is a starting guess: failures and hours on record weigh it down.\n`,
        );
      });
    });
}
