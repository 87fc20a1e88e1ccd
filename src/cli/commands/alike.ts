/** What else of this kind is on the karts, after something failed; and a look at each of them made due. */
import type { Command } from 'commander';
import { Refusal } from '../../app/index.ts';
import { count } from '../print/wrap.ts';
import { type Common, onKart, personOf, session, signed } from '../session.ts';
import type { World } from '../world.ts';

type Asking = Common & { readonly fact?: string; readonly look?: boolean; readonly all?: boolean };

export function addAlike(program: Command, world: World): void {
  signed(onKart(program.command('alike')))
    .description(
      'what else of this kind is on the karts, after something failed: age, last look; --look makes them due',
    )
    .argument('[part]', 'the part, or part/joint')
    .option('--fact <id>', 'the fact that says what failed or was found')
    .option('--look', 'make a look at each of them due')
    .option('--all', 'with --look: at every joint with the same retention, not only at those like it')
    .addHelpText('after', '\nExample:\n  kartwright alike "brake push rod/clevis pins" --demo\n')
    .action((of: string | undefined, options: Asking) =>
      session(world, options, options.look ? 'write' : 'ask', async ({ app, kart, at }) => {
        const { askForLooks, whatElse } = await import('../../app/index.ts');
        const texts = await world.riskTexts();
        const about = { ...(of === undefined ? {} : { of }), ...(options.fact ? { fact: options.fact } : {}) };
        if (options.look) {
          const wanted = {
            ...about,
            ...(options.all ? { all: true } : {}),
            ...(at ? { at } : {}),
            by: personOf(world, options),
          };
          const done = await askForLooks(app, kart, wanted, texts);
          if (done.kind === 'refused') throw new Refusal(done.problems);
          const items = done.facts.flatMap(fact => (fact.kind === 'look asked' ? fact.items : []));
          world.out(
            options.json
              ? `${JSON.stringify({ facts: done.facts })}\n`
              : `${count(items.length, 'look')} due now, on ${count(done.facts.length, 'kart')}: ${items.join('; ')}.\n`,
          );
          return;
        }
        const { alikeText } = await import('../print/alike.ts');
        const answer = await whatElse(app, kart, { ...about, ...(at ? { at } : {}) }, texts);
        world.out(options.json ? `${JSON.stringify(answer)}\n` : alikeText(answer));
      }),
    );
}
