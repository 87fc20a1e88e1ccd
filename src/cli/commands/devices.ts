/** Who may come in from the network: pair a device, see which there are, change a role, put one out. */
import type { Command } from 'commander';
import type { PairedDevice, Role } from '../../app/index.ts';
import { fail } from '../exit.ts';
import type { World } from '../world.ts';

type Options = { readonly json?: boolean };

export function addDevices(program: Command, world: World): void {
  const devices = program
    .command('devices')
    .description('phones and other devices that may reach this book over the network')
    .addHelpText(
      'after',
      '\nRoles: owner, all and other devices; mechanic, the whole record; driver, running and what was found;\nscrutineer, reads and signs. All of them read the book of their team, and no other.\n',
    );

  devices
    .command('list', { isDefault: true })
    .description('which were paired, when each was last here, and under which names they write')
    .option('--json', 'print JSON')
    .action(async (options: Options) => {
      const all = (await (await world.devices()).read()).devices.map(({ token: _, ...rest }) => rest);
      if (options.json) return world.out(`${JSON.stringify({ devices: all })}\n`);
      if (all.length === 0) return world.out('No device was paired. Start with: kartwright serve --lan\n');
      for (const one of all) world.out(line(one));
    });

  devices
    .command('pair')
    .description('make a code that lets one device in, within ten minutes')
    .option('--role <role>', 'owner, mechanic, driver or scrutineer', 'mechanic')
    .option('--team <name>', 'a team with a book of its own: small letters, digits, hyphens', '')
    .option('--json', 'print JSON')
    .addHelpText('after', '\nExample:\n  kartwright devices pair --role scrutineer\n')
    .action(async (options: Options & { readonly role: string; readonly team: string }) => {
      const code = await newCode(world, options.role, options.team);
      if (options.json) return world.out(`${JSON.stringify({ code, minutes: 10 })}\n`);
      world.out(`${code}\nType it on the page of that device within ten minutes. It lets in one ${options.role}.\n`);
    });

  devices
    .command('role')
    .description('give a device another role')
    .argument('<id>', 'of the list')
    .argument('<role>', 'owner, mechanic, driver or scrutineer')
    .option('--json', 'print JSON')
    .action(async (id: string, role: string, options: Options) => {
      const wanted = await roleOf(role);
      told(world, await changed(world, id, one => ({ ...one, role: wanted })), options);
    });

  devices
    .command('revoke')
    .description('put a device out: from now on it must be paired anew')
    .argument('<id>', 'of the list')
    .option('--json', 'print JSON')
    .addHelpText('after', '\nWhat it wrote stays in the book, and what it has on itself stays there.\n')
    .action(async (id: string, options: Options) => {
      const at = world.now().toISOString();
      told(world, await changed(world, id, one => ({ ...one, revoked: one.revoked ?? at })), options);
    });
}

type Shown = Omit<PairedDevice, 'token'>;

export async function newCode(world: World, role: string, team = ''): Promise<string> {
  const { isTeam, withCode } = await import('../../app/index.ts');
  const wanted = await roleOf(role);
  if (!isTeam(team))
    fail(
      'wrong shape',
      '--team',
      `Expected small letters, digits and hyphens, at most 40, got "${team}".`,
      'Correct it.',
    );
  const code = await world.newCode();
  const register = await world.devices();
  await register.change(state => ({
    state: withCode(state, { code, role: wanted, team, now: world.now() }),
    give: undefined,
  }));
  return code;
}

async function roleOf(text: string): Promise<Role> {
  const { ROLES } = await import('../../app/index.ts');
  const found = ROLES.find(one => one === text);
  return found ?? fail('wrong shape', 'role', `Expected ${ROLES.join(', ')}, got "${text}".`, 'Name one of them.');
}

async function changed(world: World, id: string, change: (one: PairedDevice) => PairedDevice): Promise<Shown> {
  const { withDevice } = await import('../../app/index.ts');
  const register = await world.devices();
  const found = await register.change(state => {
    const next = withDevice(state, id, change);
    return { state: next, give: next.devices.find(one => one.id === id) };
  });
  if (found === undefined)
    return fail(
      'wrong shape',
      'device',
      `Expected the id of a paired device, got "${id}".`,
      'See kartwright devices list.',
    );
  const { token: _, ...rest } = found;
  return rest;
}

const told = (world: World, one: Shown, { json }: Options): void =>
  world.out(json ? `${JSON.stringify(one)}\n` : line(one));

const line = ({ id, name, role, team, paired, seen, revoked, chains }: Shown): string =>
  `${[
    id,
    name,
    role,
    ...(team === '' ? [] : [`team ${team}`]),
    `paired ${paired.slice(0, 10)}`,
    revoked === undefined ? `last here ${seen}` : `put out ${revoked.slice(0, 10)}`,
    ...(chains.length === 0 ? [] : [`writes as ${chains.join(', ')}`]),
  ].join(' · ')}\n`;
