/** The command line: `run` takes the words after the program's name and gives the exit code. */
import { Command, CommanderError } from 'commander';
import { Refusal } from '../app/index.ts';
import { addAlike } from './commands/alike.ts';
import { addBook } from './commands/book.ts';
import { addCalc } from './commands/calc.ts';
import { addDevices } from './commands/devices.ts';
import { addForget } from './commands/forget.ts';
import { addKart } from './commands/kart.ts';
import { addKeep } from './commands/keep.ts';
import { addLabels } from './commands/labels.ts';
import { addLaps } from './commands/laps.ts';
import { addLife } from './commands/life.ts';
import { addLog } from './commands/log.ts';
import { addServe } from './commands/serve.ts';
import { addSheet } from './commands/sheet.ts';
import { addSpares } from './commands/spares.ts';
import { addTrack } from './commands/track.ts';
import { addWeakLinks } from './commands/weak-links.ts';
import { addWork } from './commands/work.ts';
import { EXIT, tell } from './exit.ts';
import { chooseUnits } from './units.ts';
import type { World } from './world.ts';

export async function run(words: readonly string[], world: World): Promise<number> {
  let code: number = EXIT.done;
  const program = new Command('kartwright')
    .description('What is due on a kart, in which order, to which number, and what stands against running.')
    .version(world.version)
    .configureOutput({ writeOut: world.out, writeErr: text => world.err(text.replace(/^error: /, 'kartwright: ')) })
    .configureHelp({ helpWidth: 80, showGlobalOptions: false })
    .showSuggestionAfterError()
    .option(
      '--units <list>',
      'units to read sizes in, one of a kind: "in, psi, °F" (default: KARTWRIGHT_UNITS, else as given)',
    )
    .exitOverride()
    .hook('preAction', command => chooseUnits(command.opts<{ units?: string }>().units, world.env.KARTWRIGHT_UNITS))
    .addHelpText(
      'after',
      `
Examples:
  kartwright plan --demo                 the plan of the invented demo kart
  kartwright new my-kart.yaml --template "six-speed gearbox"
  kartwright plan --kart my-kart.yaml
  kartwright plan --units "in, ft·lb"     sizes and torques in inches and foot pounds
The book is kept in the folder KARTWRIGHT_DATA, else .kartwright in your home.`,
    );
  addKart(program, world);
  addWork(program, world, ended => {
    code = ended;
  });
  addSheet(program, world);
  addTrack(program, world);
  addWeakLinks(program, world);
  addAlike(program, world);
  addLife(program, world);
  addSpares(program, world);
  addLog(program, world);
  addLaps(program, world);
  addLabels(program, world);
  addCalc(program, world);
  addBook(program, world);
  addKeep(program, world);
  addForget(program, world);
  addServe(program, world);
  addDevices(program, world);
  const json = words.includes('--json');
  // What was typed wrong is told as JSON too, and then once.
  if (json) for (const command of everyCommand(program)) command.configureOutput({ outputError: () => {} });
  try {
    await program.parseAsync(words.map(hyphened), { from: 'user' });
    return code;
  } catch (error) {
    if (!(error instanceof CommanderError)) return tell(error, world, json);
    if (error.exitCode === 0) return EXIT.done;
    const remedy = 'Add --help to see what is expected.';
    const message = error.message.replace(/^error: /, '');
    if (json) return tell(new Refusal([{ code: 'wrong shape', where: 'command line', message, remedy }]), world, json);
    if (!error.message.includes('outputHelp')) world.err(`${remedy}\n`);
    return EXIT.error;
  }
}

const everyCommand = (command: Command): Command[] => [command, ...command.commands.flatMap(everyCommand)];

/** `log "taken off"` as the book calls it, `log taken-off` as it is typed. */
const hyphened = (word: string, i: number, words: readonly string[]): string =>
  words[i - 1] === 'log' ? word.replace(' ', '-') : word;
