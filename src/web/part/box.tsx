import { boxesOf } from '../../app/index.ts';
import { inBox } from '../../life/index.ts';
import { Glyph } from '../glyph.tsx';
import { PrintTitle } from '../parts.tsx';
import { hashOf } from '../place.ts';
import type { Snapshot } from '../session.ts';
import { capital } from '../words.ts';

/** A box of spares: how many should lie in it, and which parts they serve. */
export function Box({ snapshot, pile }: { readonly snapshot: Snapshot; readonly pile: string }) {
  const { kart, due } = snapshot;
  const serves = boxesOf(kart).find(([name]) => name === pile)?.[1];
  if (serves === undefined)
    return (
      <>
        <h1>No such box</h1>
        <p class="note need">
          Kart {kart.name} keeps no spares called “{pile}”. Spares are named in its kart file under costs.
        </p>
      </>
    );
  const count = inBox(
    kart,
    snapshot.facts.map(({ fact }) => fact),
  ).get(pile);
  return (
    <>
      <PrintTitle title={`Spares: ${pile}`} kart={kart.name} event={due.event} invented={kart.invented} />
      <h1>{capital(pile)}</h1>
      <p class="note">
        {count === undefined
          ? 'Never counted: what lies in this box the record does not know.'
          : `${count} in the box by the record. Count what you see; what you see counts.`}
      </p>
      <a class="button main big wide no-print" href={hashOf({ sheet: 'spares' })}>
        Count the spares
      </a>
      <section class="group">
        <h2>
          Serves <span>{serves.length}</span>
        </h2>
        <ul class="rows">
          {serves.map(part => (
            <li key={part}>
              <Glyph sign="part" />
              <div>
                <a href={hashOf({ sheet: 'part', about: `${kart.name}/${part}` })}>{part}</a>
              </div>
            </li>
          ))}
        </ul>
      </section>
    </>
  );
}
