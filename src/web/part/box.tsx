import { boxesOf } from '../../app/index.ts';
import { inBox } from '../../life/index.ts';
import { Glyph } from '../glyph.tsx';
import { PrintTitle } from '../parts.tsx';
import { hashOf } from '../place.ts';
import type { Snapshot } from '../session.ts';
import { partWords } from '../words/part.ts';
import { capital } from '../words/reads.ts';

/** A box of spares: how many should lie in it, and which parts they serve. */
export function Box({ snapshot, pile }: { readonly snapshot: Snapshot; readonly pile: string }) {
  const { kart, due } = snapshot;
  const serves = boxesOf(kart).find(([name]) => name === pile)?.[1];
  if (serves === undefined)
    return (
      <>
        <h1>{partWords.noSuchBox}</h1>
        <p class="note need">{partWords.kartKeepsNoSpares(kart.name, pile)}</p>
      </>
    );
  const count = inBox(
    kart,
    snapshot.facts.map(({ fact }) => fact),
  ).get(pile);
  return (
    <>
      <PrintTitle title={partWords.spares(pile)} kart={kart.name} event={due.event} invented={kart.invented} />
      <h1>{capital(pile)}</h1>
      <p class="note">{count === undefined ? partWords.neverCountedWhatLies : partWords.inBoxByRecordCount(count)}</p>
      <a class="button main big wide no-print" href={hashOf({ sheet: 'spares' })}>
        {partWords.countSpares}
      </a>
      <section class="group">
        <h2>
          {partWords.serves} <span>{serves.length}</span>
        </h2>
        <ul class="rows level">
          {serves.map(part => (
            <li key={part}>
              <Glyph sign="part" />
              <div>
                <a href={hashOf({ sheet: 'part', about: `${kart.name}/${part}` })}>{capital(part)}</a>
              </div>
            </li>
          ))}
        </ul>
      </section>
    </>
  );
}
