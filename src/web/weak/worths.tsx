/** What each link means for its hazard: what it buys if it never let go, what it costs if it is forgotten. */
import { useState } from 'preact/hooks';
import type { Hazard } from '../../risk/index.ts';
import { weakWords } from '../words/weak.tsx';

const FEW = 8;

export function Worths({ hazard: { links, top } }: { readonly hazard: Hazard }) {
  const [all, setAll] = useState(false);
  if (links.length === 0) return null;
  const shown = all ? links : links.slice(0, FEW);
  return (
    <details class="group">
      <summary>
        <h3>
          {weakWords.whatEachLinkMeans} <span>{links.length}</span>
        </h3>
      </summary>
      {top === null && <p class="soft">{weakWords.fromWhatIsKnownAlone}</p>}
      <ul class="worths">
        {shown.map(link => (
          <li key={link.id}>
            <b>{link.says}</b>
            <dl>
              <div>
                <dt>{weakWords.letsGo}</dt>
                <dd>{link.likely?.words}</dd>
              </div>
              <div>
                <dt>{weakWords.buys}</dt>
                <dd>{link.buys}</dd>
              </div>
              <div>
                <dt>{weakWords.costs}</dt>
                <dd>{link.costs}</dd>
              </div>
              <div class="soft">
                <dt>{weakWords.from}</dt>
                <dd>{link.likely?.basis}</dd>
              </div>
            </dl>
          </li>
        ))}
      </ul>
      {links.length > FEW && (
        <button type="button" class="button plain wide" onClick={() => setAll(!all)}>
          {all ? weakWords.onlyFirst(FEW) : weakWords.all(links.length)}
        </button>
      )}
    </details>
  );
}
