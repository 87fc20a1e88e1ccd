/** All numbers of the day in a few lines, each with its warning: what is read while walking to the kart. */
import type { TrackPart } from '../../prep/index.ts';
import { own } from '../choice/choice.ts';
import { Glyph } from '../glyph.tsx';
import { trackWords } from '../words/track.tsx';
import { NAMES } from './part.tsx';

export const Glance = ({ parts }: { readonly parts: readonly TrackPart[] }) => (
  <section class="group" aria-labelledby="track-glance">
    <h2 id="track-glance">{trackWords.theNumbers}</h2>
    <ul class="rows glance">
      {parts.map(part => (
        <li key={part.subject}>
          <Glyph sign={part.warning !== null ? 'caution' : part.lead.length > 0 ? 'note' : 'not known'} />
          <span>{NAMES[part.subject]}</span>
          <b>
            {part.subject === 'premix' && <small class="soft">{part.lead[0]?.label}</small>}
            {shown(part).map(text => (
              <span key={text}>{text}</span>
            ))}
          </b>
          {part.warning !== null && (
            <p>
              <strong class="signal-word">{trackWords.warning}</strong> {part.warning}
            </p>
          )}
        </li>
      ))}
    </ul>
  </section>
);

/** The first figure; of the tyres the four as they stand on the kart, left and right with a stroke between. */
function shown({ subject, lead: figures }: TrackPart): readonly string[] {
  const lead = figures.map(one => ({ ...one, text: own(one.text) }));
  const [first] = lead;
  if (first === undefined) return [trackWords.notKnownYet];
  if (subject !== 'tyres') return [first.text];
  const [number = '', unit = ''] = first.text.split(' ');
  const of = (tyre: string) => lead.find(({ label }) => label.startsWith(tyre))?.text.split(' ')[0] ?? '–';
  if (lead.every(({ text }) => text === first.text)) return [trackWords.allOf(`${number} ${unit}`)];
  return (['front', 'rear'] as const).map(
    end => `${trackWords.ends[end]} ${of(`${end} left`)} | ${of(`${end} right`)} ${unit}`,
  );
}
