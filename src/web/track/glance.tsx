/** All numbers of the day in a few lines, each with its warning: what is read while walking to the kart. */
import type { TrackPart } from '../../prep/index.ts';
import { Glyph } from '../glyph.tsx';
import { NAMES } from './part.tsx';

export const Glance = ({ parts }: { readonly parts: readonly TrackPart[] }) => (
  <section class="group" aria-labelledby="track-glance">
    <h2 id="track-glance">The numbers</h2>
    <ul class="rows glance">
      {parts.map(part => (
        <li key={part.subject}>
          <Glyph sign={part.warning !== null ? 'caution' : part.lead.length > 0 ? 'note' : 'not known'} />
          <span>{NAMES[part.subject]}</span>
          <b>{shown(part)}</b>
          {part.warning !== null && <strong class="signal-word">Warning: read it before it runs.</strong>}
        </li>
      ))}
    </ul>
  </section>
);

/** The first figure; of the tyres the four as they stand on the kart, left and right with a stroke between. */
function shown({ subject, lead }: TrackPart): string {
  const [first] = lead;
  if (first === undefined) return 'not known yet';
  if (subject !== 'tyres') return first.text;
  const [fl, fr, rl, rr] = ['front left', 'front right', 'rear left', 'rear right'].map(
    tyre => lead.find(({ label }) => label.startsWith(tyre))?.text.split(' ')[0] ?? '–',
  );
  return `front ${fl} | ${fr}, rear ${rl} | ${rr} ${first.text.split(' ')[1] ?? ''}`;
}
