/** Labels with codes for parts and boxes of spares, as a page to print. */
import type { Command } from 'commander';
import { SYSTEMS, type System } from '../../kart/index.ts';
import { fail } from '../exit.ts';
import { type Common, onKart, session } from '../session.ts';
import type { World } from '../world.ts';

type Asking = Common & { readonly address: string; readonly only?: string };

export function addLabels(program: Command, world: World): void {
  onKart(program.command('labels'))
    .description('labels with codes for parts and boxes of spares, as a web page to print (A4 or Letter)')
    .requiredOption('--address <url>', 'where the phone that scans reaches the page: http://192.168.1.20:50271/')
    .option('--only <system>', 'parts of one system, or "boxes" for the boxes of spares alone')
    .addHelpText(
      'after',
      '\nExample:\n  kartwright labels --demo --address http://192.168.1.20:50271/ --only brakes > labels.html\n',
    )
    .action((options: Asking) =>
      session(world, options, 'ask', async ({ app, kart: name, at }) => {
        const [{ labelsFor, qrCodes }, { labelsPage }] = await Promise.all([
          import('../../app/index.ts'),
          import('../print/labels.ts'),
        ]);
        const kart = await app.kart(name, at === undefined ? {} : { at });
        const only = systemOf(options.only);
        const labels = labelsFor(kart, { base: options.address, ...(only === undefined ? {} : { only }) });
        if (options.json) return world.out(`${JSON.stringify({ labels })}\n`);
        const { event } = await app.due(name, at === undefined ? {} : { at });
        world.out(
          labelsPage(labels, await qrCodes(), [
            ['Event', event ?? 'none planned'],
            ['Kart', `${kart.name}${kart.invented ? ' (invented)' : ''}`],
            ['Printed', `${world.now().toISOString().slice(0, 16).replace('T', ' ')} UTC`],
          ]),
        );
      }),
    );
}

function systemOf(text: string | undefined): System | 'boxes' | undefined {
  if (text === undefined || text === 'boxes') return text;
  return (
    SYSTEMS.find(system => system === text) ??
    fail(
      'wrong shape',
      '--only',
      `Expected a system of the kart or "boxes", got "${text}".`,
      `Systems: ${SYSTEMS.join(', ')}.`,
    )
  );
}
