import { type OpenPlace, openOnKart } from '../../app/index.ts';
import { Glyph, type Sign } from '../glyph.tsx';
import type { Snapshot } from '../session.ts';
import { liesOpenWords } from '../words/lies-open.ts';
import { dateOf, timeOf } from '../words/reads.ts';

/** What work has left open on the kart, in one place: parts off, joints half done, tools out. */
export function OpenList({ snapshot }: { readonly snapshot: Snapshot }) {
  const { off, halfDone, tools } = openOnKart(snapshot.kart, snapshot.state);
  const said = [
    off.length > 0 ? liesOpenWords.countOff(off.length) : '',
    halfDone.length > 0 ? liesOpenWords.halfDone(halfDone.length) : '',
    tools.length > 0 ? liesOpenWords.toolsOut(tools.length) : '',
  ].filter(Boolean);
  if (said.length === 0) return null;
  return (
    <details class="group open-list">
      <summary>
        <h2>
          {liesOpenWords.openOnKart} <span>{said.join(', ')}</span>
        </h2>
      </summary>
      <Places title={liesOpenWords.partsOff} sign="off" list={off} />
      <Places title={liesOpenWords.jointsHalfDone} sign="open" list={halfDone} />
      {tools.length > 0 && (
        <>
          <h3>{liesOpenWords.toolsUsedAndNotCounted}</h3>
          <ul class="rows">
            {tools.map(tool => (
              <li key={tool}>
                <Glyph sign="note" />
                <div>{tool}</div>
              </li>
            ))}
          </ul>
        </>
      )}
    </details>
  );
}

function Places(props: { readonly title: string; readonly sign: Sign; readonly list: readonly OpenPlace[] }) {
  if (props.list.length === 0) return null;
  return (
    <>
      <h3>{props.title}</h3>
      <ul class="rows">
        {props.list.map(({ on, text, at, by }) => (
          <li key={on}>
            <Glyph sign={props.sign} />
            <div>
              {text}
              <p>
                {dateOf(at)} {timeOf(at)}, {by}
              </p>
            </div>
          </li>
        ))}
      </ul>
    </>
  );
}
