/** Shapes that stand beside their word, so that nothing is said by colour alone. */
import type { MarkKind } from './drawing/marks.ts';

export type Sign =
  | 'done'
  | 'ready'
  | 'waiting'
  | MarkKind
  | 'fit'
  | 'not fit'
  | 'not known'
  | 'struck'
  | 'note'
  | 'caution'
  | 'here'
  | 'retention'
  | 'together'
  | 'part'
  | 'away'
  | 'search';

const PATHS: Readonly<Record<Sign, string>> = {
  done: 'M3 3h18v18H3zM7 12.5l3.5 3.5L17 8.5',
  ready: 'M12 3a9 9 0 1 0 0 18a9 9 0 0 0 0-18z',
  waiting: 'M4 12h3M10.5 12h3M17 12h3',
  defect: 'M12 3l10 18H2zM12 10v5M12 17v1.5',
  off: 'M3 3h18v18H3z',
  open: 'M12 3a9 9 0 1 0 0 18a9 9 0 0 0 0-18zM12 7a5 5 0 1 0 0 10a5 5 0 0 0 0-10z',
  due: 'M12 3a9 9 0 1 0 0 18a9 9 0 0 0 0-18zM12 7v5l3.5 3',
  fit: 'M3 3h18v18H3zM7 12.5l3.5 3.5L17 8.5',
  'not fit': 'M3 3h18v18H3zM7 7l10 10M17 7L7 17',
  'not known': 'M3 3h18v18H3zM9.2 9.4a2.9 2.9 0 1 1 4.3 2.5c-1 .6-1.5 1.1-1.5 2.3M12 16.4v1.4',
  struck: 'M5 5l14 14M19 5L5 19',
  note: 'M5 12h14',
  caution: 'M12 3l10 18H2zM12 10v5M12 17v1.5',
  here: 'M12 7a5 5 0 1 0 0 10a5 5 0 0 0 0-10zM12 2v5M12 17v5M2 12h5M17 12h5',
  retention: 'M12 2l10 10l-10 10l-10 -10z',
  together: 'M12 2l10 10l-10 10l-10 -10zM12 6l6 6l-6 6l-6 -6z',
  part: 'M2 12l5 -8.5h10l5 8.5l-5 8.5h-10z',
  away: 'M12 3a9 9 0 1 0 0 18a9 9 0 0 0 0-18zM5.7 5.7l12.6 12.6',
  search: 'M10 3a7 7 0 1 0 0 14a7 7 0 0 0 0-14zM15.2 15.2L21 21',
};
const SIGNAL: readonly Sign[] = ['defect', 'not fit', 'caution', 'here'];

/** Drawn only; the word stands beside it. */
export function Glyph({ sign }: { readonly sign: Sign }) {
  return (
    <svg class={`glyph${SIGNAL.includes(sign) ? ' signal' : ''}`} viewBox="0 0 24 24" aria-hidden="true">
      <path d={PATHS[sign]} />
    </svg>
  );
}
