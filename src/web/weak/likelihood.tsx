/** How likely a hazard is over the event, in so many of so many; its code; what nobody knows of it, by name. */
import type { WeakLinksAnswer } from '../../app/index.ts';
import { Glyph } from '../glyph.tsx';

export type AskedHazard = WeakLinksAnswer['hazards'][number];

export function Likelihood(props: { readonly hazard: AskedHazard; readonly event: string | null }) {
  const { hazard, event } = props;
  const { top, atLeast, unknown, links } = hazard;
  const said = top ?? atLeast;
  const latent = links.filter(link => link.latent);
  return (
    <section class="group">
      <h3>How likely over {event ?? 'an event: none is planned'}</h3>
      {said === null ? (
        <p class="likely">Not known: there is neither record nor guess.</p>
      ) : (
        <>
          <p class="likely">
            {top === null && 'The whole is not known. At least '}
            <b>{said.words}</b>
          </p>
          <p class="soft">
            {said.basis} {codeWords(hazard)} A low number is no permission.
          </p>
        </>
      )}
      {unknown.length > 0 && (
        <>
          <h4>No number for {unknown.length}</h4>
          <ul class="rows">
            {unknown.map(link => (
              <li key={link.id}>
                <Glyph sign="not known" />
                <div>
                  <b>{link.says}</b>
                  <p>{link.unknown}</p>
                </div>
              </li>
            ))}
          </ul>
        </>
      )}
      {latent.length > 0 && (
        <>
          <h4>There by the kart file, looked at by nobody since: counted as perhaps gone</h4>
          <ul class="rows">
            {latent.map(link => (
              <li key={link.id}>
                <Glyph sign="waiting" />
                <div>{link.says}</div>
                <span class="side">{link.likely?.words.split(',')[0]}</span>
              </li>
            ))}
          </ul>
        </>
      )}
    </section>
  );
}

/** The published scheme goes by the chance over the life or the season, not over one event. */
export function codeWords({ season }: AskedHazard): string {
  if (season === null) return '';
  const { code, level, events, whole } = season;
  const over = events === 1 ? 'Over this one event' : `Over a season of ${events} events alike`;
  return `${over} ${whole ? '' : 'at least '}${code}, ${level.toLowerCase()}: a code orders hazards, no more.`;
}
