/** What parts and a lost weekend cost, from the kart file: money in the owner's own, one for the whole file. */
import type { LayeredKart } from './layers.ts';
import type { Kart, KartCosts, SpareCost } from './model.ts';
import type { Report } from './problem.ts';
import { quantityAt } from './quantities.ts';
import { locate, placeIn, top } from './source.ts';
import { didYouMean } from './suggest.ts';

/** Only where the file speaks of them. */
export function costsOf(
  { costs }: Pick<LayeredKart, 'costs'>,
  kinds: ReadonlyMap<string, unknown>,
  report: Report,
): Pick<Kart, 'costs'> {
  if (Object.keys(costs).length === 0) return {};
  const accepted = quantityAt(costs, 'accepted chance', report, 'ratio');
  if (accepted && !(accepted.si > 0 && accepted.si < 1))
    report(locate(costs, top(undefined), ['accepted chance']), {
      expected: 'a chance between 0 and 100 %',
      got: accepted.text,
      remedy: 'write the chance over one event that you put up with: 1 %',
    });
  const spares = costs.spares ?? {};
  const read: Record<string, SpareCost> = {};
  for (const [kind, file] of Object.entries(spares)) {
    if (!kinds.has(kind))
      report(placeIn(spares, kind) ?? top(undefined), {
        expected: 'a kind that is known',
        got: `"${kind}"`,
        remedy: didYouMean(kind, kinds.keys(), 'name a kind of the library: spares are said by kind, not by part'),
      });
    const [mass, change] = [quantityAt(file, 'mass', report, 'mass'), quantityAt(file, 'change', report, 'time')];
    for (const [key, value] of Object.entries({ mass, change }))
      if (value && !(value.si >= 0))
        report(locate(file, top(undefined), [key]), {
          expected: `a ${key} of 0 or more`,
          got: value.text,
          remedy: 'leave it out where it is not known',
        });
    read[kind] = {
      ...(file.price !== undefined && { price: file.price }),
      ...(mass && { mass }),
      ...(change && { change }),
      alike: file.alike ?? true,
      ...(file.source !== undefined && { source: file.source }),
    };
  }
  const lostWeekend = costs['lost weekend'];
  const made: KartCosts = {
    ...(lostWeekend !== undefined && { lostWeekend }),
    ...(accepted && { acceptedChance: accepted.si }),
    spares: read,
  };
  return { costs: made };
}
