/** Labels for parts and for boxes of spares: what is read on them, and the address that opens what is known of it. */
import type { Kart, System } from '../kart/index.ts';
import { SYSTEMS } from '../kart/index.ts';
import { pileOf } from '../life/index.ts';
import { Refusal, refuse } from './problem.ts';

export type Label = {
  readonly what: 'part' | 'box';
  readonly name: string;
  /** The system of a part; what a box of spares serves. */
  readonly under: string;
  readonly kart: string;
  readonly url: string;
};
export type LabelAsk = {
  /** Where the page is reached: 'http://192.168.1.20:50271/'. */
  readonly base: string;
  /** Parts of this system alone, or the boxes of spares alone; left out: every part, then every box. */
  readonly only?: System | 'boxes';
};

/** In the order of the walk-round. Throws `Refusal` for an address that no phone could open. */
export function labelsFor(kart: Kart, { base, only }: LabelAsk): readonly Label[] {
  const at = baseOf(base);
  const label = (what: Label['what'], name: string, under: string): Label => ({
    what,
    name,
    under,
    kart: kart.name,
    url: labelUrl(at, what, kart.name, name),
  });
  const parts = SYSTEMS.flatMap(system =>
    Object.values(kart.parts).filter(part => part.system === system && (only === undefined || only === system)),
  ).map(part => label('part', part.id, part.system));
  const boxes = only === undefined || only === 'boxes' ? boxesOf(kart) : [];
  return [
    ...parts,
    ...boxes.map(([pile, serves]) =>
      label('box', pile, serves.length === 1 ? 'for one part' : `for ${serves.length} parts`),
    ),
  ];
}

/** Each box of spares with the parts it serves: where the kart file says what one costs there is one to keep. */
export function boxesOf(kart: Kart): readonly (readonly [pile: string, serves: readonly string[]])[] {
  const piles = new Map<string, string[]>();
  for (const part of Object.values(kart.parts)) {
    if (kart.costs?.spares[part.kind] === undefined) continue;
    const pile = pileOf(kart, part);
    piles.set(pile, [...(piles.get(pile) ?? []), part.id]);
  }
  return [...piles];
}

/** A kart's name may hold anything, so it is one word of the address with what follows. */
export const labelUrl = (base: string, what: Label['what'], kart: string, name: string): string =>
  `${base}#/${what}/${encodeURIComponent(`${kart}/${name}`)}`;

function baseOf(text: string): string {
  let url: URL | undefined;
  try {
    url = new URL(text);
  } catch {
    url = undefined;
  }
  if (url === undefined || !/^https?:$/.test(url.protocol))
    throw new Refusal([
      refuse(
        'wrong shape',
        'address',
        `Expected the address at which a phone opens the page, got "${text}".`,
        'Write it as the browser shows it: http://192.168.1.20:50271/',
      ),
    ]);
  return `${url.origin}${url.pathname}`;
}
