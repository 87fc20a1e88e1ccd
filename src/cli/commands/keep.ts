/** Nothing lost: is the book whole, a copy of all of it, and back again. */
import type { Command } from 'commander';
import { type BookStore, type KeepRules, Refusal, type TakenOut, type Verified } from '../../app/index.ts';
import { fail } from '../exit.ts';
import { count } from '../print/wrap.ts';
import { openBook } from '../session.ts';
import type { World } from '../world.ts';

type Options = { readonly json?: boolean };

export function addKeep(program: Command, world: World): void {
  addVerify(program, world);

  program
    .command('backup')
    .description('copy the whole book into a file, photos too, while others write; prove it')
    .argument(
      '[file]',
      'where to write it; nothing is overwritten (default: a name with the time, in the folder of backups)',
    )
    .option(
      '--keep <rules>',
      'which of that folder stay (default: KARTWRIGHT_KEEP, else "7 daily, 4 weekly, 12 monthly")',
    )
    .option('--teams', 'of every team served from here too, each into a folder of its own')
    .option('--list', 'print what is in the folder, and do nothing')
    .option('--json', 'print JSON')
    .addHelpText(
      'after',
      '\nExamples:\n  kartwright backup\n  kartwright backup /media/stick/book.sqlite\nThe folder is KARTWRIGHT_BACKUPS, better on another disk; else backups, beside the book.\n`serve` makes one a day, of its teams too. A backup is a book: verify and restore read it.\n',
    )
    .action(
      async (
        file: string | undefined,
        options: Options & { readonly keep?: string; readonly list?: boolean; readonly teams?: boolean },
      ) => {
        const { backups } = world;
        if (options.list) return printList(world, options);
        const rules = await rulesOf(world, options.keep);
        const path = file ?? (await backups.name(world.now()));
        const { teams, failed } = options.teams ? await backups.ofTeams() : { teams: 0, failed: [] };
        const { facts, files, lacking } = await backups.write(path);
        const dropped = file === undefined ? await dropOld(world, rules) : [];
        if (options.json) world.out(`${JSON.stringify({ file: path, facts, files, lacking, dropped, teams })}\n`);
        else {
          world.out(`${count(facts, 'fact')} and ${count(files, 'file')} are in ${path}, each as it is in the book.\n`);
          if (dropped.length > 0) world.out(`${count(dropped.length, 'older backup')} no longer kept.\n`);
          if (teams > failed.length)
            world.out(`${count(teams - failed.length, 'team')} too, each in its own folder.\n`);
        }
        if (failed.length > 0)
          fail(
            'book',
            'teams',
            `Expected a backup of each team, got none of ${failed.join('; ')}.`,
            'See to it there.',
          );
      },
    );

  program
    .command('restore')
    .description('bring a backup into a book that holds nothing yet')
    .argument('<file>', 'a backup')
    .option('--json', 'print JSON')
    .addHelpText(
      'after',
      '\nExample:\n  KARTWRIGHT_DATA=new-folder kartwright restore backup.sqlite\nFrom then on this machine writes under a new name, for others may hold what it wrote after the backup.\n',
    )
    .action(async (file: string, options: Options) => {
      const { copyBook } = await import('../../app/index.ts');
      const from = await world.backups.open(file);
      if (from === undefined)
        return fail(
          'unknown file',
          file,
          'Expected a backup, and there is no such file.',
          'Name one: kartwright backup --list.',
        );
      try {
        const to = await world.store();
        try {
          const done = await copyBook(from, to);
          if (done.kind === 'refused') throw new Refusal(done.problems);
          const device = await world.backups.renameDevice();
          const { facts, files, lacking } = done;
          const since = await takenOut(world, from, file);
          if (options.json) return world.out(`${JSON.stringify({ facts, files, lacking, device, ...since })}\n`);
          world.out(
            `${count(facts, 'fact')} and ${count(files, 'file')} are in the book, each as it was in the backup.\n`,
          );
          world.out(`This machine writes as ${device} from now on.\n`);
          sayTakenOut(world, since);
        } finally {
          await to.close();
        }
      } finally {
        await from.close();
      }
    });
}

/** A backup is a copy of before: who was taken out since is in it again. */
async function takenOut(world: World, backup: BookStore, file: string): Promise<TakenOut> {
  const { takenOutSince } = await import('../../app/index.ts');
  const later = await world.backups.later(file);
  try {
    return await takenOutSince(backup, later);
  } finally {
    for (const one of later) await one.close();
  }
}

function sayTakenOut(world: World, { until, again }: TakenOut): void {
  for (const { as, facts } of again)
    world.out(
      `Somebody who was taken out since, as "${as}", stands again in ${count(facts.length, 'fact')}, among them ${facts[0]}: kartwright forget, with the name that stands there.\n`,
    );
  if (until !== '')
    world.out(
      `Whoever else was taken out after ${until.slice(0, 16).replace('T', ' ')} UTC stands in it again too: take them out again with kartwright forget.\n`,
    );
}

/** Also under `book`, beside the other commands on the whole of it. */
export function addVerify(parent: Command, world: World): void {
  parent
    .command('verify')
    .description('was anything in the book changed, lost or doubled?')
    .argument('[file]', 'a backup (default: the book)')
    .option('--demo', 'the demo book')
    .option('--json', 'print JSON')
    .addHelpText('after', '\nExample:\n  kartwright verify\n')
    .action(async (file: string | undefined, options: Options & { readonly demo?: boolean }) => {
      const proof = file === undefined ? await proofOfBook(world, options) : await proofOfFile(world, file);
      if (proof.problems.length > 0) throw new Refusal(proof.problems);
      if (options.json) return world.out(`${JSON.stringify(proof)}\n`);
      world.out(`${count(proof.facts, 'fact')}: every one is as it was written, none is missing.\n`);
      if (proof.redacted > 0)
        world.out(
          `${count(proof.redacted, 'of them was', 'of them were')} redacted: signed by somebody whose name was taken out.\n`,
        );
      if (proof.files > 0) world.out(`${count(proof.files, 'file')}: each gives the hash it is named by.\n`);
      if (proof.snapshot === 'fits') world.out('The snapshot it opens from is what the facts give.\n');
      if (proof.snapshot === 'thrown away')
        world.out('The snapshot it opened from was not what the facts give. It was thrown away, and is made anew.\n');
      if (proof.lacking.length > 0)
        world.out(
          `${count(proof.lacking.length, 'file')} that facts name: not here. Another device may still have them.\n`,
        );
    });
}

async function proofOfBook(world: World, options: { readonly demo?: boolean }): Promise<Verified> {
  const app = await openBook(world, options);
  try {
    return await app.verifyBook();
  } finally {
    await app.close();
  }
}

async function proofOfFile(world: World, file: string): Promise<Verified> {
  const { proofOf } = await import('../../app/index.ts');
  const store = await world.backups.open(file);
  if (store === undefined)
    return fail('unknown file', file, 'Expected a backup, and there is no such file.', 'Correct the name.');
  try {
    return await proofOf(store);
  } finally {
    await store.close();
  }
}

/** Only after the newest was written and proved, so that a damaged book never pushes good copies out. */
async function dropOld(world: World, rules: KeepRules): Promise<readonly string[]> {
  const { noLongerKept } = await import('../../app/index.ts');
  const all = await world.backups.list();
  const old = new Set(
    noLongerKept(
      all.map(one => one.at),
      rules,
    ),
  );
  const dropped = all.filter(one => old.has(one.at));
  for (const one of dropped) await world.backups.remove(one);
  return dropped.map(one => one.file);
}

async function printList(world: World, options: Options): Promise<void> {
  const all = await world.backups.list();
  if (options.json) return world.out(`${JSON.stringify({ folder: await world.backups.folder(), backups: all })}\n`);
  for (const { file } of all) world.out(`${file}\n`);
  if (all.length === 0) world.out(`No backup in ${await world.backups.folder()} yet.\n`);
}

async function rulesOf(world: World, said = world.env.KARTWRIGHT_KEEP): Promise<KeepRules> {
  const { KEEP, keepRulesIn } = await import('../../app/index.ts');
  if (!said) return KEEP;
  const expected = 'Expected rules such as "7 daily, 4 weekly, 12 monthly"';
  return (
    keepRulesIn(said) ??
    fail('wrong shape', '--keep', `${expected}, got "${said}".`, 'Correct --keep, or KARTWRIGHT_KEEP.')
  );
}
