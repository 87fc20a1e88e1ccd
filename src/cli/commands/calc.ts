/** One number asked alone: what can be typed. What is answered stands in calc-answer.ts, fetched when it is asked. */
import type { Command } from 'commander';
import type { World } from '../world.ts';

export type Asked = {
  readonly input?: string;
  readonly schema?: boolean;
  readonly explain?: boolean;
  readonly json?: boolean;
};

export function addCalc(program: Command, world: World): void {
  program
    .command('calc')
    .description('one number asked alone; without a subject, lists the subjects')
    .argument('[subject]', 'which number')
    .option('--input <json>', 'the question (default: standard input)')
    .option('--schema', 'print the JSON Schema of the question')
    .option('--explain', 'how the number is worked out, and from which sources')
    .option('--json', 'print JSON')
    .addHelpText('after', '\nExample:\n  kartwright calc rear-track --schema\n')
    .action(async (name: string | undefined, options: Asked) => {
      const { calc } = await import('./calc-answer.ts');
      await calc(world, name, options);
    });
}
