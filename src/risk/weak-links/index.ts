/** What would hurt us, and which second retentions take most of it away. */
export type { Hazard, Likely, Link, LinkPair, SinglePoint, WeakLinks, Worth } from './model.ts';
export { type Fitting, type Outcome, type SecondRetentions, secondRetentions } from './second-retentions.ts';
export { looksOf, type WeakLinksAsk, weakLinks } from './weak-links.ts';
