/** One number asked alone: what can be typed. What is answered stands in calc-answer.ts, fetched when it is asked. */
import type { Command } from 'commander';
import { type Common, onKart } from '../session.ts';
import type { World } from '../world.ts';

export type Asked = Pick<Common, 'kart' | 'at' | 'demo' | 'json'> & {
  readonly input?: string;
  readonly schema?: boolean;
  readonly explain?: boolean;
};

export function addCalc(program: Command, world: World): void {
  onKart(program.command('calc'), 'kart of the book, or a kart file, that says what the question leaves out')
    .description('one number asked alone; without a subject, lists the subjects')
    .argument('[subject]', 'which number')
    .option('--input <json>', 'the question (default: standard input)')
    .option('--schema', 'print the JSON Schema of the question')
    .option('--explain', 'how the number is worked out, and from which sources')
    .addHelpText(
      'after',
      '\nExample:\n  kartwright calc rear-track --schema\n  kartwright calc scales --demo --input \'{"total":"181 kg"}\'\n',
    )
    .action(async (name: string | undefined, options: Asked) => {
      const { calc } = await import('./calc-answer.ts');
      await calc(world, name, options);
    });
}
