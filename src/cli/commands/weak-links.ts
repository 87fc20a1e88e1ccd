/** What would hurt us, and which second retention pays most. What is answered stands in the app, fetched when it is asked. */
import type { Command } from 'commander';
import { Refusal } from '../../app/index.ts';
import { numberIn } from '../number.ts';
import { type Common, onKart, personOf, session, signed } from '../session.ts';
import type { World } from '../world.ts';

type Asking = Common & { readonly minutes?: string; readonly money?: string; readonly season?: string };
type Wanting = Common & { readonly with: string };

export function addWeakLinks(program: Command, world: World): void {
  const weak = onKart(program.command('weak-links'))
    .description(
      'what alone or together ends brakes, steering, wheels ..., how likely, and which second retention pays most',
    )
    .option('--event <name>', 'for this event of the book (default: the next)')
    .option('--minutes <n>', 'minutes there are for second retentions (default: as many as it takes)')
    .option('--money <n>', 'money there is for them, in your own')
    .option('--season <n>', 'events of the season, for the codes (default: those of the book in this year)')
    .addHelpText(
      'after',
      `
Examples:
  kartwright weak-links --demo --minutes 30 --money 20
  kartwright weak-links fit "balance bar/lock ring" --with "safety wire"`,
    )
    .action((options: Asking) =>
      session(world, options, 'ask', async ({ app, kart, at }) => {
        const [{ weakLinksOf }, { weakLinksText }] = await Promise.all([
          import('../../app/index.ts'),
          import('../print/weak-links.ts'),
        ]);
        const { event, minutes, money, season } = options;
        const answer = await weakLinksOf(
          app,
          kart,
          {
            ...(at === undefined ? {} : { at }),
            ...(event === undefined ? {} : { event }),
            ...(minutes === undefined ? {} : { minutes: numberIn('minutes', minutes) }),
            ...(money === undefined ? {} : { money: numberIn('money', money) }),
            ...(season === undefined ? {} : { season: numberIn('season', season) }),
          },
          await world.riskTexts(),
        );
        world.out(options.json ? `${JSON.stringify(answer)}\n` : weakLinksText(answer));
      }),
    );

  signed(onKart(weak.command('fit')))
    .description(
      'make a second retention a job of the plan: the kart file names it, and its check is due until it is there',
    )
    .argument('<joint>', 'as weak-links names it: "brake push rod/clevis pins"')
    .requiredOption('--with <retention>', 'what to fit: "strap round the clevis"')
    .addHelpText('after', '\nExample:\n  kartwright weak-links fit "balance bar/lock ring" --with "safety wire"\n')
    .action((joint: string, _, command: Command) => {
      const options = command.optsWithGlobals<Wanting>();
      return session(world, options, 'write', async ({ app, kart }) => {
        const { wantSecond } = await import('../../app/index.ts');
        const wanted = { joint, retention: options.with, by: personOf(world, options) };
        const done = await wantSecond(app, kart, wanted, await world.riskTexts());
        if (done.kind === 'refused') throw new Refusal(done.problems);
        world.out(
          options.json
            ? `${JSON.stringify({ facts: done.facts })}\n`
            : `${options.with} on ${joint} is a job of the plan now; the kart is not fit until it is done.\n`,
        );
      });
    });
}
