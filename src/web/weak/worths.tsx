/** What each link means for its hazard: what it buys if it never let go, what it costs if it is forgotten. */
import { useState } from 'preact/hooks';
import type { Hazard } from '../../risk/index.ts';

const FEW = 8;

export function Worths({ hazard: { links, top } }: { readonly hazard: Hazard }) {
  const [all, setAll] = useState(false);
  if (links.length === 0) return null;
  const shown = all ? links : links.slice(0, FEW);
  return (
    <details class="group">
      <summary>
        <h3>
          What each link means for it <span>{links.length}</span>
        </h3>
      </summary>
      {top === null && <p class="soft">From what is known alone.</p>}
      <ul class="worths">
        {shown.map(link => (
          <li key={link.id}>
            <b>{link.says}</b>
            <dl>
              <div>
                <dt>Lets go</dt>
                <dd>{link.likely?.words}</dd>
              </div>
              <div>
                <dt>Buys</dt>
                <dd>{link.buys}</dd>
              </div>
              <div>
                <dt>Costs</dt>
                <dd>{link.costs}</dd>
              </div>
              <div class="soft">
                <dt>From</dt>
                <dd>{link.likely?.basis}</dd>
              </div>
            </dl>
          </li>
        ))}
      </ul>
      {links.length > FEW && (
        <button type="button" class="button plain wide" onClick={() => setAll(!all)}>
          {all ? `Only the first ${FEW}` : `All ${links.length}`}
        </button>
      )}
    </details>
  );
}
