/**
 * Every source a card may name. `seen` says how it was used: `read` in a public copy, `excerpt` as quoted by somebody
 * who is named, `memory` recalled and not verified, `common practice` without a published source.
 */
export type Source = { readonly title: string; readonly seen: 'read' | 'excerpt' | 'memory' | 'common practice' };
