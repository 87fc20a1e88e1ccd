/** Laps: a log or a stopwatch into the book, and what the book holds. What is answered is fetched when it is asked. */
import type { Command } from 'commander';
import { type Common, onKart, session, signed } from '../session.ts';
import type { World } from '../world.ts';
import type { ByHand, Importing } from './laps-in.ts';
import { addLapQuestions } from './laps-questions.ts';
import { sure, type Writing } from './log.ts';

type Predicting = { readonly session?: string; readonly gearing?: string; readonly box?: string };

export function addLaps(program: Command, world: World): void {
  const laps = program.command('laps').description('laps from a log or a stopwatch: into the book and out of it');

  const bringIn = said(laps.command('import'))
    .description('a log as CSV with a header, GPX 1.1 or NMEA 0183: one run with its laps, or nothing of it')
    .argument('<file>', 'the log; up to 64 MB it is kept with the record, a larger one gives its laps alone')
    .option('--gate <lat,lon,lat,lon>', 'start and finish, then where each sector ends', several)
    .option('--column <what=heading>', 'which column says what: time=Elapsed, "speed=v [km/h]"', several)
    .option('--on <day>', 'when it was driven, where the log names no day: 2026-05-12, or "2026-05-12 14:30"')
    .option('--without <lap>', 'the number of a lap that does not count, for traffic or a mistake', several)
    .addHelpText(
      'after',
      `
The gate is the one of the track, as it was set last; where none is known, one is found in the log.
Examples:
  kartwright laps import heat-1.csv --event "Club round 2" --session "Heat 1"
  kartwright laps import heat-1.gpx --track "Hollow Lane" --gate 45.00093,10.00132,45.00101,10.00140`,
    );
  bringIn.action((file: string, options: Importing) =>
    session(world, options, 'write', async on => {
      const { bringInLog } = await import('./laps-in.ts');
      await bringInLog(world, on, file, options);
    }),
  );

  said(laps.command('by-hand'))
    .description('times read off a stopwatch, in a row as they were driven')
    .argument('<times...>', '52.31, 0:52.31 or 1:02.5')
    .addHelpText('after', '\nExample:\n  kartwright laps by-hand 52.31 52.10 51.94 --session "Heat 1" --minutes 6\n')
    .action((times: readonly string[], options: ByHand) =>
      session(world, options, 'write', async on => {
        const { bringInTimes } = await import('./laps-in.ts');
        await bringInTimes(world, on, times, options);
      }),
    );

  addSheets(program, laps, world);
  addLapQuestions(laps, world);
  onKart(laps.command('list'))
    .description('every session with laps, its best and how many')
    .option('--session <name>', 'one session with all its laps; the newest that goes by the name')
    .addHelpText('after', '\nExample:\n  kartwright laps list --demo\n')
    .action((options: Writing & { readonly session?: string }) =>
      session(world, options, 'ask', async on => {
        const { listLaps } = await import('./laps-out.ts');
        await listLaps(world, on, options);
      }),
    );

  onKart(laps.command('predict'))
    .description(
      'what a lap should take on the track of a log, what each change is worth, and which sprockets of the box',
    )
    .option('--session <name>', 'a session with a log (default: the newest)')
    .option('--gearing <front/rear>', 'teeth that were on (default: as the book has them)')
    .option('--box <teeth>', 'sprockets at hand: "21, 22, 23", or "16, 17 / 21, 22, 23" (default: of the kart file)')
    .addHelpText(
      'after',
      '\nExample:\n  kartwright laps predict --session "Heat 1" --gearing 17/23 --box "22, 23, 24"\n',
    )
    .action((options: Common & Predicting) =>
      session(world, options, 'ask', async ({ app, kart, at }) => {
        const [{ predictLaps }, { predictedText }] = await Promise.all([
          import('../../app/index.ts'),
          import('../print/laps-predicted.ts'),
        ]);
        const { session: named, gearing, box } = options;
        const answer = await predictLaps(app, kart, {
          ...(at === undefined ? {} : { at }),
          ...(named === undefined ? {} : { session: named }),
          ...(gearing === undefined ? {} : { gearing }),
          ...(box === undefined ? {} : { box }),
        });
        world.out(options.json ? `${JSON.stringify(answer)}\n` : predictedText(answer));
      }),
    );
}

function addSheets(program: Command, laps: Command, world: World): void {
  onKart(laps.command('sheet'))
    .description('one session on a page: laps, conditions, pressures, set-up and what changed')
    .argument('[session]', 'as the record names it (default: the newest)')
    .addHelpText('after', '\nExample:\n  kartwright laps sheet --demo "Saltmere sprint Practice 2"\n')
    .action((wanted: string | undefined, options: Common) =>
      session(world, options, 'ask', async on => {
        const { printSession } = await import('./laps-out.ts');
        await printSession(world, on, { ...options, ...(wanted !== undefined && { session: wanted }) });
      }),
    );
  onKart(program.command('season'))
    .description('hours and laps by event, and the best lap of each track, dry and wet')
    .addHelpText('after', '\nExample:\n  kartwright season --demo\n')
    .action((options: Common) =>
      session(world, options, 'ask', async on => {
        const { printSeason } = await import('./laps-out.ts');
        await printSeason(world, on, options);
      }),
    );
}

const said = (command: Command): Command =>
  sure(signed(onKart(command)))
    .option('--track <name>', 'where (default: that of the event, or whose gate lies in the log)')
    .option('--event <name>', 'at which event (default: the one that was on)')
    .option('--session <name>', 'which session')
    .option('--wet', 'in the wet')
    .option('--conditions <text>', 'weather and track in words')
    .option('--minutes <n>', 'how long the engine ran (default: as long as the log shows it moving)')
    .option('--run <id>', 'a run that is in the book already: its hours count once');

const several = (text: string, before: readonly string[] = []): readonly string[] => [...before, text];
