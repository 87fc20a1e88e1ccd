/** The set-up sheet: how the kart stands, and what was changed. What is answered stands in the app, fetched when it is asked. */
import type { Command } from 'commander';
import { type Common, onKart, session } from '../session.ts';
import { typedTime } from '../when.ts';
import type { World } from '../world.ts';

type Asking = Common & { readonly against?: string; readonly about?: string };

export function addSheet(program: Command, world: World): void {
  onKart(program.command('sheet'))
    .description('the set-up as the record has it, and what differs from the baseline or a past session')
    .option('--against <session|time>', 'a session of the record or a past moment (default: the baseline)')
    .option('--about <setting>', 'one setting: all that is said of it, and what this kart showed')
    .addHelpText(
      'after',
      '\nExample:\n  kartwright sheet --demo --against "Heat 1"\n  kartwright sheet --demo --about gearing\n',
    )
    .action((options: Asking) =>
      session(world, options, 'ask', async ({ app, kart, at }) => {
        const [{ sheetOf }, { sheetText }] = await Promise.all([
          import('../../app/index.ts'),
          import('../print/sheet.ts'),
        ]);
        const { against, about } = options;
        const sheet = await sheetOf(
          app,
          kart,
          {
            ...(at === undefined ? {} : { at }),
            ...(against === undefined ? {} : { against: typedTime(against) }),
            ...(about === undefined ? {} : { about }),
          },
          await world.setupEffects(),
        );
        world.out(options.json ? `${JSON.stringify(sheet)}\n` : sheetText(sheet));
      }),
    );
}
