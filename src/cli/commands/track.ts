/** At the track: what the session to come asks for, and what the last one showed. What is answered is fetched when it is asked. */
import type { Command } from 'commander';
import { TYPED } from '../kinds.ts';
import { type Common, onKart, session, signed } from '../session.ts';
import type { World } from '../world.ts';
import { sure, type Writing } from './log.ts';

export type Asking = Common & {
  readonly laps?: string;
  readonly wet?: boolean;
  readonly wanted?: string;
  readonly explain?: boolean;
};
/** The options of `log ran` are among them, under the same names. */
export type Done = Writing & {
  readonly hot?: readonly string[];
  readonly treads?: readonly string[];
  readonly plug?: string;
  readonly fuel?: string;
};

export function addTrack(program: Command, world: World): void {
  const track = onKart(program.command('track'))
    .description(
      'before a session: air, main jet, pressures, fuel and gearing, from the record and the weather read last',
    )
    .option('--laps <n>', 'laps of the session (default: as many as the last)')
    .option('--wet', 'it will be wet')
    .option('--wanted <speeds>', 'wanted in the last gear: "12800 rpm at 115 km/h"; finds the sprockets in the box')
    .option('--explain', 'how each answer is worked out, and from which sources')
    .addHelpText(
      'after',
      `
Examples:
  kartwright track --demo --laps 12
  kartwright log weather --temperature "8 °C" --pressure "1002 hPa" --station --humidity "70 %" --surface "10 °C"
  kartwright track --wanted "12800 rpm at 115 km/h"`,
    )
    .action((options: Asking) =>
      session(world, options, 'ask', async on => {
        const { askTrack } = await import('./track-answer.ts');
        await askTrack(world, on, options);
      }),
    );

  sure(signed(onKart(track.command('set'))))
    .description('cold pressures as they were set, all at once')
    .argument('<pressures...>', 'like "front left=0.62 bar", one a tyre')
    .addHelpText('after', '\nExample:\n  kartwright track set "front left=0.62 bar" "front right=0.62 bar"\n')
    .action((pressures: readonly string[], _, command: Command) => {
      const options = command.optsWithGlobals<Writing>();
      return session(world, options, 'write', async on => {
        const { setTyres } = await import('./track-facts.ts');
        await setTyres(world, on, pressures, options);
      });
    });

  const done = track
    .command('done')
    .description('after a session: the run and what was read after it, all at once or not at all');
  for (const option of TYPED.ran.options) done.option(option.flag, option.help);
  sure(signed(onKart(done)))
    .option('--hot <pressures...>', 'hot pressures, like "front left=0.79 bar", one a tyre')
    .option('--treads <temperatures...>', 'tread temperatures, like "rear left=62/66/60 °C"')
    .option('--plug <says>', 'what plug and piston said: lean, right or rich')
    .option('--fuel <amount>', 'filled in less drained, with its unit: "4.2 l"')
    .addHelpText(
      'after',
      '\nExample:\n  kartwright track done --minutes 12 --laps 10 --hot "rear left=0.79 bar" --plug right --fuel "3.1 l"\n',
    )
    .action((_, command: Command) => {
      const options = command.optsWithGlobals<Done>();
      return session(world, options, 'write', async on => {
        const { sessionDone } = await import('./track-facts.ts');
        await sessionDone(world, on, options);
      });
    });
}
