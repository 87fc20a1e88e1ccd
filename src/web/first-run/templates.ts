/** The templates a library holds, told from their texts without reading their YAML: it takes a phone a second. */
import type { LibraryTexts } from '../../kart/index.ts';

export type Offered = { readonly name: string; readonly about: string };

/** The fullest first: the gearbox kart, as most have who come. */
export const templatesIn = ({ templates }: Pick<LibraryTexts, 'templates'>): readonly Offered[] =>
  Object.values(templates)
    .toSorted((a, b) => b.length - a.length)
    .flatMap(text => {
      const name = /^template:[ \t]*["']?(.+?)["']?[ \t]*$/m.exec(text)?.[1];
      const about = /^#[ \t]*(.*)$/m.exec(text)?.[1] ?? '';
      return name === undefined ? [] : [{ name, about }];
    });
