/** A person taken out of the book: their name wherever it stands, their photos and logs. */
import type { Command } from 'commander';
import { Refusal } from '../../app/index.ts';
import { count } from '../print/wrap.ts';
import { personOf, signed } from '../session.ts';
import type { World } from '../world.ts';

type Options = {
  readonly json?: boolean;
  readonly by?: string;
  readonly words?: boolean;
  readonly dryRun?: boolean;
  readonly dropBackups?: boolean;
};

export function addForget(program: Command, world: World): void {
  signed(program.command('forget'))
    .description('take a person out of the book for good: name, photos, logs; what was done to the kart stays')
    .argument('<person>', 'the name, as it stands in the book')
    .option('--words', 'their notes and remarks too; what was found on the kart stays')
    .option('--dry-run', 'say what would go, and change nothing')
    .option('--drop-backups', 'then write a new backup and remove those of before, which still hold the name')
    .option('--json', 'print JSON')
    .addHelpText(
      'after',
      '\nExample:\n  kartwright forget "R. Stranger" --dry-run\nIt travels with the book: whoever meets it takes the name out too. It cannot be undone.\n',
    )
    .action(async (person: string, options: Options) => {
      const app = await world.open();
      try {
        const forgot = await app.forget({
          person,
          by: personOf(world, options),
          words: options.words === true,
          dryRun: options.dryRun === true,
        });
        if (forgot.kind === 'refused') throw new Refusal(forgot.problems);
        const { as, theirs, naming, files, left, done } = forgot;
        if (done) {
          const { withoutPerson } = await import('../../app/index.ts');
          for (const { register, team } of await world.registers())
            await register.change(state => ({ state: withoutPerson(state, team, { person, as }), give: undefined }));
        }
        const old = await world.backups.list();
        const dropped = done && options.dropBackups ? await anew(world, old) : [];
        if (options.json) return world.out(`${JSON.stringify({ ...forgot, backups: old.length, dropped })}\n`);
        const goes = done ? 'is' : 'would be';
        world.out(
          `${count(theirs, 'entry', 'entries')} written or signed by them, ${count(naming, 'other', 'others')} that name them: the name ${goes} "${as}", or a black bar.\n`,
        );
        if (files.length > 0)
          world.out(`${count(files.length, 'photo or log', 'photos and logs')} of theirs ${goes} gone.\n`);
        for (const where of left)
          world.out(`The name still stands in ${where}: the kart would not be the same without it.\n`);
        if (!done) return world.out('Nothing was changed. The same without --dry-run does it, for good.\n');
        if (dropped.length > 0) world.out(`${count(dropped.length, 'older backup')} removed; a new one was written.\n`);
        else if (old.length > 0)
          world.out(
            `${count(old.length, 'backup')} of before in ${await world.backups.folder()} still hold the name: kartwright backup, then remove them.\n`,
          );
        world.out('Exports and copies elsewhere are not reached. Devices take it out when they meet this book.\n');
      } finally {
        await app.close();
      }
    });
}

async function anew(world: World, old: Awaited<ReturnType<World['backups']['list']>>): Promise<readonly string[]> {
  await world.backups.write(await world.backups.name(world.now()));
  for (const one of old) await world.backups.remove(one);
  return old.map(({ file }) => file);
}
