/** The page for phone and tablet, served from this machine. `start` is what `npm start` runs. */
import { type Command, InvalidArgumentError, Option } from 'commander';
import type { App } from '../../app/index.ts';
import { fail } from '../exit.ts';
import { planShort } from '../print/plan.ts';
import { qrText } from '../print/qr.ts';
import { openBook } from '../session.ts';
import type { Serving, World } from '../world.ts';
import { newCode } from './devices.ts';

type Options = {
  readonly port: number;
  readonly host: string;
  readonly demo?: boolean;
  readonly lan?: boolean;
  readonly https?: boolean;
  readonly log: string;
  readonly backup: boolean;
  readonly json?: boolean;
};

/** In the range that is never assigned to a service (RFC 6335, section 6: dynamic ports from 49152). */
const PORT = 50271;

export function addServe(program: Command, world: World): void {
  const common = (command: Command): Command =>
    command
      .option('--port <n>', 'port; 0 takes any free one', port, PORT)
      .option('--host <address>', 'address to listen on; who comes from another machine must be paired', '127.0.0.1')
      .option('--lan', 'for phones on the same network: listen on all addresses of this machine, and pair each device')
      .option('--https', 'with a certificate of our own, so that a phone can install the page')
      .addOption(
        new Option('--log <level>', 'what the server says on the error output, one JSON object a line')
          .choices(['debug', 'info', 'warn', 'error', 'none'])
          .env('KARTWRIGHT_LOG')
          .default('error'),
      )
      .option('--no-backup', 'make no backup a day (see kartwright backup)')
      .option('--demo', 'on a throw-away book with the invented demo kart')
      .option('--json', 'print the address as JSON');

  common(program.command('serve'))
    .description('serve the page for phone and tablet, on this machine only unless told otherwise')
    .addHelpText(
      'after',
      '\nExamples:\n  kartwright serve --port 8080\n  kartwright serve --lan --https\nKARTWRIGHT_NAMES=name,address: under which a proxy or the machine around a container hands requests on.\nOn this machine no login is needed; any other must be paired: kartwright devices --help.\n',
    )
    .action(async (options: Options) => {
      await serving(world, await openBook(world, options), options);
    });

  common(program.command('start', { hidden: true })).action(async (options: Options) => {
    const app = await openBook(world, options);
    await app.seedDemo(await world.demo());
    for (const { name, invented } of options.json ? [] : await app.karts()) {
      if (invented) world.out(`Kart ${name} and its season are invented.\n`);
      world.out(`${planShort(await app.plan(name))}\n`);
    }
    await serving(world, app, options);
  });
}

async function serving(world: World, app: App, options: Options): Promise<void> {
  const { port, json, demo, backup, lan = false, https = false, log } = options;
  const stopBackups = backup && !demo ? await world.backups.daily() : undefined;
  try {
    const host = lan ? '0.0.0.0' : options.host;
    const server = await world.serve(app, { port, host, https, log }).catch(error => taken(error, port));
    if (json) world.out(`${JSON.stringify({ url: server.url, reached: server.reached })}\n`);
    else {
      world.out(`Kartwright is at ${server.url}  (Ctrl-C stops it)\n`);
      if ((await app.karts()).length === 0)
        world.out('The book holds no kart yet: the page asks four questions, and there is its first plan.\n');
      if (server.reached.length > 0) await sayHowToComeIn(world, server);
    }
    await world.stopped();
    await server.close();
  } finally {
    stopBackups?.();
    await app.close();
  }
}

/** On the terminal of the machine that serves: whoever reads it there may let a phone in. */
async function sayHowToComeIn(world: World, { reached, authority }: Serving): Promise<void> {
  const [best = ''] = reached;
  const code = await newCode(world, 'mechanic');
  if (world.ask !== undefined) world.out(`\n${qrText(`${best}#/pair/${code}`)}`);
  world.out(`\nOn a phone on the same network: ${best}  and the code ${code}\n`);
  world.out('It lets in one mechanic within ten minutes. More: kartwright devices pair, or Devices on the page.\n');
  if (authority === undefined)
    world.out(
      'Over plain HTTP whoever is on this network can read along, and no page can be installed: --https changes that.\n',
    );
  else
    world.out(
      `The phone warns until it trusts this machine: open ${best}authority.pem there, compare its SHA-256 fingerprint\n${authority.fingerprint}\nand install it as an authority. To undo it, remove it in the phone's settings and delete ${authority.folder}.\n`,
    );
}

function taken(error: unknown, port: number): never {
  if ((error as { code?: unknown } | null)?.code !== 'EADDRINUSE') throw error;
  return fail(
    'book',
    '--port',
    `Expected port ${port} to be free, and another program has it.`,
    'It may be this one, started before: look there; or name another with --port, 0 for any free one.',
  );
}

function port(text: string): number {
  const value = Number(text);
  if (/^\d+$/.test(text) && value <= 65535) return value;
  throw new InvalidArgumentError('Expected a port from 0 to 65535.');
}
