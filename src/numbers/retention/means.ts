/** What holds a joint: how each means lets go, when it is renewed, and whether a second one fails in another way. */

/** How it lets go. Two means that let go the same way are one means. */
export type LetsGo =
  | 'friction lost'
  | 'bond broken'
  | 'pin or tab sheared'
  | 'wire broken'
  | 'spring sprung off'
  | 'band aged or cut'
  | 'stop moved';

export type Means = {
  readonly name: string;
  /** Undefined: it shows or marks something, but holds nothing. */
  readonly letsGo?: LetsGo;
  readonly renew: 'each time' | 'when worn' | 'never';
  readonly how: string;
  readonly pattern: RegExp;
};

const means = (
  name: string,
  letsGo: LetsGo | undefined,
  renew: Means['renew'],
  pattern: RegExp,
  how: string,
): Means => ({
  name,
  renew,
  how,
  pattern,
  ...(letsGo && { letsGo }),
});

/** The sources stand on the card of `retention`; what has none there is common practice. */
export const MEANS: readonly Means[] = [
  means(
    'witness mark',
    undefined,
    'each time',
    /\bwitness mark|counted aloud/,
    'A mark shows that something turned. It holds nothing, and does not show lost preload.',
  ),
  means(
    'split pin',
    'pin or tab sheared',
    'each time',
    /\bsplit pins?\b|\bcotter/,
    'A new pin, the largest that fits, head in the slot, one leg bent over the bolt end and one down; nut at the low end of its torque, then forward to the next slot, never past the maximum.',
  ),
  means(
    'safety wire',
    'wire broken',
    'each time',
    /\b(?:safety|locking|tether)? ?wires?\b(?! clip)/,
    'New wire, double twist, so led that it pulls toward tight; start within 3 mm of the hole, bend the pigtail in; never turn a bolt to line up its hole.',
  ),
  means(
    'spring clip',
    'spring sprung off',
    'when worn',
    /\b(?:r-|spring |safety |cap |push |new )?clips?\b|\br-pins?\b|\blinch pins?\b|\bcirclips?\b|\bsnap rings?\b|\bspring hook/,
    'Used again while it springs shut by itself; it bears light side load only and does not lock a thread. A strap or tether round it is the second means.',
  ),
  means(
    'strap',
    'band aged or cut',
    'each time',
    /\b(?:cable )?ties?\b|\bstraps?\b|\btethers?\b|\btape band/,
    'A new strap each strip: nylon dries out and ages in heat and sun. Only as a catch for a part that is already fixed.',
  ),
  means(
    'thread-locking compound',
    'bond broken',
    'each time',
    /\bthread-lock(?:er|ing)\b/,
    'Both threads clean and dry, old compound brushed out; heat lets it go.',
  ),
  means(
    'locking nut',
    'friction lost',
    'when worn',
    /\block(?:ing)? nuts?\b|\ball-metal nut/,
    'Thrown away when fingers can turn it down; a new one on brakes, steering, hubs and wheels. Not on a part that turns about the bolt, unless castellated and pinned.',
  ),
  means(
    'second nut',
    'friction lost',
    'when worn',
    /\bsecond nut\b/,
    'Hold the first nut while the second is pulled against it.',
  ),
  means(
    'lock tab',
    'pin or tab sheared',
    'each time',
    /\block tabs?\b|\block washers?\b|\bstar washer/,
    'A fresh fold each time: a tab that was bent before breaks.',
  ),
  means(
    'key',
    'pin or tab sheared',
    'when worn',
    /\bkeyway\b|\bkey\b/,
    'A key locates and backs up. It holds nothing along the shaft.',
  ),
  means(
    'collar',
    'stop moved',
    'when worn',
    /\bcollars?\b|\b(?:end|axle-end|anti-slide) stop\b/,
    'Against the part, its own screw to its torque.',
  ),
  means(
    'spring',
    'spring sprung off',
    'when worn',
    /\bsprings?\b(?! (?:clip|hook|screw))/,
    'Hooks closed and unworn, each on its own anchor.',
  ),
  means('clamp', 'friction lost', 'when worn', /\bclamps?\b/, 'Seats clean and dry, screws to their torque.'),
  means(
    'torque',
    'friction lost',
    'each time',
    /\btorque\b|^(?:bolts?|screws?|nuts?|pulley screws|nut or bolt)$/,
    'Holds by preload alone: one way of letting go.',
  ),
];

/** The means that a text of a kart file names, in the order of the list; none: not known. */
export const meansOf = (text: string): readonly Means[] => MEANS.filter(each => each.pattern.test(text.toLowerCase()));

/**
 * Does the second retention fail in another way than the first? `no` where it holds nothing or lets go the same way;
 * `not known` where one of the texts says nothing that is known here. Where a text leaves a choice (`split pin or wire`),
 * every choice has to fail in another way.
 */
export function failsAnotherWay(first: string, second: string): 'yes' | 'no' | 'not known' {
  const [one, two] = [meansOf(first), meansOf(second)];
  if (one.length === 0 || two.length === 0) return 'not known';
  const other = (means: Means): boolean =>
    means.letsGo !== undefined && one.every(each => each.letsGo !== means.letsGo);
  const all = /\bor\b/.test(second) ? two.every(other) : two.some(other);
  return all ? 'yes' : 'no';
}
