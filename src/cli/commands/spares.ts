/** Which spares to carry, and what lies in the box. What is answered stands in the app, fetched when it is asked. */
import type { Command } from 'commander';
import { Refusal } from '../../app/index.ts';
import { numberIn } from '../number.ts';
import { type Common, onKart, personOf, session, signed } from '../session.ts';
import type { World } from '../world.ts';

type Asking = Common & {
  readonly hours?: string;
  readonly money?: string;
  readonly kilograms?: string;
  readonly minutes?: string;
};

export function addSpares(program: Command, world: World): void {
  const spares = onKart(program.command('spares'))
    .description('which spares to carry so that the weekend is most likely finished, and what to buy')
    .option('--event <name>', 'for this event of the book (default: the next)')
    .option('--hours <n>', 'running hours to reckon over (default: those of the event)')
    .option('--money <n>', 'money there is, in your own (default: as much as it takes)')
    .option('--kilograms <n>', 'what the box may weigh (default: as much as it takes)')
    .option('--minutes <n>', 'there are between two sessions: what takes longer to change is no help')
    .addHelpText(
      'after',
      `
Examples:
  kartwright spares --demo --money 150 --kilograms 6
  kartwright spares have chain 1`,
    )
    .action((options: Asking) =>
      session(world, options, 'ask', async ({ app, kart, at }) => {
        const [{ sparesOf }, { sparesText }] = await Promise.all([
          import('../../app/index.ts'),
          import('../print/spares.ts'),
        ]);
        const { event, ...rest } = options;
        const numbers = (['hours', 'money', 'kilograms', 'minutes'] as const).flatMap(name => {
          const text = rest[name];
          return text === undefined ? [] : [[name, numberIn(name, text)] as const];
        });
        const answer = await sparesOf(
          app,
          kart,
          {
            ...(at === undefined ? {} : { at }),
            ...(event === undefined ? {} : { event }),
            ...Object.fromEntries(numbers),
          },
          (await world.riskTexts()).priors,
        );
        world.out(options.json ? `${JSON.stringify(answer)}\n` : sparesText(answer));
      }),
    );

  signed(onKart(spares.command('have')))
    .description('how many of a part lie in the spares box; fitting a fresh one takes one out')
    .argument('<part>', 'a kind of the kart file, or a part: chain')
    .argument('<count>', 'how many')
    .addHelpText('after', '\nExample:\n  kartwright spares have chain 1\n')
    .action((part: string, count: string, _, command: Command) => {
      const options = command.optsWithGlobals<Common>();
      return session(world, options, 'write', async ({ app, kart }) => {
        const payload = { kind: 'spares counted', of: part, count: numberIn('count', count) };
        const done = await app.record(kart, [payload], { by: personOf(world, options) });
        if (done.kind === 'refused') throw new Refusal(done.problems);
        world.out(
          options.json
            ? `${JSON.stringify({ facts: done.facts })}\n`
            : `In the spares box: ${payload.count} × ${part}.\n`,
        );
      });
    });
}
