import { DRAWINGS } from '../dimensioned/which.ts';
import { drawKart } from '../drawing/geometry.ts';
import { KartDrawing } from '../drawing/kart-drawing.tsx';
import { MARK_WORDS, MARKS, type MarkKind, marksOf } from '../drawing/marks.ts';
import { partsOff } from '../drawing/parts-off.ts';
import { Glyph } from '../glyph.tsx';
import { PrintTitle } from '../parts.tsx';
import { hashOf } from '../place.ts';
import type { Snapshot } from '../session.ts';
import { kartWords } from '../words/kart.ts';

/** The kart from above with what stands open, each by shape, number and word. */
export type KartProps = { readonly snapshot: Snapshot; readonly here: string | undefined };

export function KartSheet({ snapshot, here }: KartProps) {
  const { kart, state, due } = snapshot;
  const marks = marksOf(kart, state, due.due, drawKart(kart).view);
  const used = MARKS.filter(kind => marks.some(m => m.lines.some(l => l.kind === kind)));
  return (
    <>
      <PrintTitle
        title={kartWords.kartFromAbove}
        kart={kart.name}
        event={snapshot.fitness.event}
        invented={kart.invented}
      />
      <h1 class="no-print">{kartWords.kartFromAbove}</h1>
      <div class="kart-page head-gap">
        <figure class="sheet">
          <KartDrawing
            kart={kart}
            marks={marks}
            off={partsOff(snapshot)}
            here={here}
            title={kartWords.kartFromAbovePlaces(kart.name, marks.length)}
          />
          <figcaption>
            <Legend kinds={used} />
          </figcaption>
        </figure>
        <section aria-label={kartWords.openWorkByPlace}>
          {DRAWINGS.map((name, n) => (
            <a
              key={name}
              class={n === 0 ? 'button wide' : 'button wide head-gap'}
              href={hashOf({ sheet: 'drawing', about: name })}
            >
              {kartWords.withItsDimensions[name]}
            </a>
          ))}
          <a class="button wide head-gap" href={hashOf({ sheet: 'joints' })}>
            {kartWords.jointsBySystem}
          </a>
          <a class="button wide head-gap" href={hashOf({ sheet: 'numbers' })}>
            {kartWords.numbers}
          </a>
          <a class="button wide head-gap" href={hashOf({ sheet: 'setup' })}>
            {kartWords.setUpHowItStands}
          </a>
          <a class="button wide head-gap" href={hashOf({ sheet: 'weak' })}>
            {kartWords.weakLinksWhatWouldHurt}
          </a>
          <a class="button wide head-gap" href={hashOf({ sheet: 'labels' })}>
            {kartWords.labelsForPartsAndBoxes}
          </a>
          <a class="button wide head-gap" href={hashOf({ sheet: 'build' })}>
            {kartWords.build}
          </a>
          <a class="button wide head-gap" href={hashOf({ sheet: 'start' })}>
            {kartWords.anotherKart}
          </a>
          {marks.length === 0 && <p class="note">{kartWords.nothingLiesOff}</p>}
          <ol>
            {marks.map(m => (
              <li key={m.n} class="group">
                <h2>
                  {kartWords.place(m.n)} <span>{kartWords.open(m.lines.length)}</span>
                </h2>
                <ul class="rows">
                  {m.lines.map((l, i) => (
                    <li key={`${l.part}${i}`}>
                      <Glyph sign={l.kind} />
                      <div>
                        <a href={hashOf({ sheet: 'part', about: `${kart.name}/${l.part}` })}>{l.part}</a>: {l.text}
                      </div>
                      <span class="side">{MARK_WORDS[l.kind]}</span>
                    </li>
                  ))}
                </ul>
              </li>
            ))}
          </ol>
        </section>
      </div>
    </>
  );
}

function Legend({ kinds }: { readonly kinds: readonly MarkKind[] }) {
  return (
    <p class="legend">
      {kinds.map(kind => (
        <span key={kind}>
          <Glyph sign={kind} /> {MARK_WORDS[kind]}
        </span>
      ))}
    </p>
  );
}
