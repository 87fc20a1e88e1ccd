/** What can be asked of laps: two side by side, and whether a change of the set-up helped. Answers are fetched when asked. */
import type { Command } from 'commander';
import { type Common, onKart, session } from '../session.ts';
import type { World } from '../world.ts';
import type { Helping } from './laps-asked.ts';

export function addLapQuestions(laps: Command, world: World): void {
  onKart(laps.command('compare'))
    .description('two laps side by side by distance: where the second gained and lost, and how sure that is')
    .argument('<a>', 'a session whose log is kept: its best lap, or "Heat 1#3" for lap 3')
    .argument('<b>', 'another lap of it, or of another session over the same gate')
    .addHelpText('after', '\nExample:\n  kartwright laps compare "Heat 1#2" "Heat 1#5"\n')
    .action((a: string, b: string, options: Common) =>
      session(world, options, 'ask', async on => {
        const { printCompared } = await import('./laps-asked.ts');
        await printCompared(world, on, { a, b, json: options.json });
      }),
    );
  onKart(laps.command('helped'))
    .description('did a change of the set-up make it faster: laps of one day with it and without')
    .argument('[change]', 'the setting, or part of its name (default: the newest day on which one changed)')
    .option('--worth <seconds>', 'the effect on a lap that you want to find, as 0.1 s')
    .option('--matters <seconds>', 'less than this makes no practical difference, as 0.05 s')
    .addHelpText(
      'after',
      `
Runs are sessions; what was set between them is read from the record (log set-up).
A change that came once and never went again is not told from the track.
Example:
  kartwright laps helped "rear width" --worth "0.1 s"`,
    )
    .action((change: string | undefined, options: Common & Helping) =>
      session(world, options, 'ask', async on => {
        const { printHelped } = await import('./laps-asked.ts');
        await printHelped(world, on, { ...options, change });
      }),
    );
}
