/** Kart files: a new one from a template, and whether one reads. */
import type { Command } from 'commander';
import { fromKartFile, Refusal } from '../../app/index.ts';
import type { Problem } from '../../kart/index.ts';
import { fail } from '../exit.ts';
import { count, wrap } from '../print/wrap.ts';
import type { World } from '../world.ts';

export function addKart(program: Command, world: World): void {
  program
    .command('new')
    .description('write a kart file to fill in, from a template')
    .argument('<file>', 'where to write it; nothing is overwritten')
    .requiredOption('--template <name>', 'six-speed gearbox, single-speed direct-drive, four-stroke junior')
    .option('--name <name>', 'name of the kart (default: the name of the file)')
    .option('--json', 'print JSON')
    .addHelpText('after', '\nExample:\n  kartwright new my-kart.yaml --template "six-speed gearbox" --name 7\n')
    .action(
      async (file: string, options: { readonly template: string; readonly name?: string; readonly json?: boolean }) => {
        const name = options.name ?? nameOf(file);
        const { newKartFile } = await import('../../kart/index.ts');
        const made = newKartFile(options.template, name, await world.library(), world.schemaFor(file));
        if (!made.ok) throw new Refusal(made.problems.map(one => fromKartFile(one, '--template')));
        if (!(await world.writeNew(file, made.text)))
          fail(
            'kart file',
            file,
            'Expected no file there yet, and there is one.',
            'Choose another name; nothing was overwritten.',
          );
        if (options.json) {
          world.out(`${JSON.stringify({ file, kart: name, template: options.template })}\n`);
          return;
        }
        world.out(wrap(`Wrote ${file}. Fill in what is marked "measure yours", then:`));
        const typed = /^[\w./-]+$/.test(file) ? file : `"${file}"`;
        world.out(`  kartwright check ${typed}\n  kartwright plan --kart ${typed}\n`);
      },
    );

  program
    .command('check')
    .description('does a kart file read? Every problem with its line, column and remedy')
    .argument('<file>', 'the kart file')
    .option('--json', 'print JSON')
    .addHelpText('after', '\nExample:\n  kartwright check my-kart.yaml\n')
    .action(async (file: string, options: { readonly json?: boolean }) => {
      const text = await world.readFile(file);
      if (text === undefined)
        return fail(
          'unknown file',
          file,
          'Expected a kart file, and there is none.',
          'Make one: kartwright new FILE --template NAME.',
        );
      const { readKart } = await import('../../kart/index.ts');
      const read = readKart(text, await world.library());
      if (!read.ok) throw new Refusal(read.problems.map(one => fromKartFile(one, at(file, one))));
      const { kart, notes } = read;
      const counts = { parts: size(kart.parts), joints: size(kart.joints), items: size(kart.items) };
      if (options.json) world.out(`${JSON.stringify({ kart: kart.name, ...counts, notes })}\n`);
      else {
        world.out(
          `Kart ${kart.name} reads: ${count(counts.parts, 'part')}, ${count(counts.joints, 'joint')}, ${count(counts.items, 'item')}.\n`,
        );
        for (const note of notes) world.out(wrap(`${at(file, note)}: ${note.message} ${note.remedy}`, '  '));
      }
    });
}

const size = (record: object): number => Object.keys(record).length;

const nameOf = (file: string): string =>
  file
    .split(/[\\/]/)
    .at(-1)
    ?.replace(/\.ya?ml$/, '') || 'kart';

/** 'my-kart.yaml:12:3 (parts > rear hub left > kind)' */
const at = (file: string, problem: Problem): string => {
  const path = problem.path === '' ? '' : ` (${problem.path})`;
  return `${problem.file ?? file}:${problem.line}:${problem.column}${path}`;
};
