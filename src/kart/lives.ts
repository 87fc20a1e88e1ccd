/** How long parts of each kind last, as the owner or the maker expects it, from the kart file. */
import type { LayeredKart } from './layers.ts';
import type { ExpectedLife, Kart } from './model.ts';
import type { Place, Report } from './problem.ts';
import { quantityAt } from './quantities.ts';
import { locate, placeIn, top } from './source.ts';
import { didYouMean } from './suggest.ts';

/** Only where the file speaks of them. A life is running time: hours of the kart, not of the calendar. */
export function livesOfKinds(
  { lives }: Pick<LayeredKart, 'lives'>,
  kinds: ReadonlyMap<string, unknown>,
  report: Report,
): Pick<Kart, 'lives'> {
  const read: Record<string, ExpectedLife> = {};
  for (const [kind, file] of Object.entries(lives)) {
    const place: Place = placeIn(lives, kind) ?? top(undefined);
    if (!kinds.has(kind))
      report(place, {
        expected: 'a kind that is known',
        got: `"${kind}"`,
        remedy: didYouMean(kind, kinds.keys(), 'name a kind of the library: lives are said by kind, not by part'),
      });
    const [tenth, half] = (['one in ten gone by', 'half gone by'] as const).map(key => {
      const value = quantityAt(file, key, report, 'time');
      if (value === undefined || value.si > 0) return value;
      report(locate(file, place, [key]), {
        expected: 'a time above 0',
        got: value.text,
        remedy: 'write running hours: 12 h',
      });
      return undefined;
    });
    if (tenth && half && !(tenth.si < half.si))
      report(place, {
        expected: 'one in ten to be gone before half are',
        got: `one in ten by ${tenth.text}, half by ${half.text}`,
        remedy: 'exchange the two, or leave one out',
      });
    read[kind] = {
      ...(tenth && { tenthGoneBy: tenth }),
      ...(half && { halfGoneBy: half }),
      source: file.source ?? 'the kart file',
    };
  }
  return Object.keys(read).length > 0 ? { lives: read } : {};
}
