/** How likely a hazard is over the event, in so many of so many; its code; what nobody knows of it, by name. */
import type { WeakLinksAnswer } from '../../app/index.ts';
import { Glyph } from '../glyph.tsx';
import { weakWords } from '../words/weak.tsx';

export type AskedHazard = WeakLinksAnswer['hazards'][number];

export function Likelihood(props: { readonly hazard: AskedHazard; readonly event: string | null }) {
  const { hazard, event } = props;
  const { top, atLeast, unknown, links } = hazard;
  const said = top ?? atLeast;
  const latent = links.filter(link => link.latent);
  return (
    <section class="group">
      <h3>{weakWords.howLikelyOver(event ?? weakWords.eventNoneIsPlanned)}</h3>
      {said === null ? (
        <p class="likely">{weakWords.notKnownThereIsNeither}</p>
      ) : (
        <>
          <p class="likely">
            {top === null ? weakWords.wholeIsNotKnownAtLeast(<b>{said.words}</b>) : <b>{said.words}</b>}
          </p>
          <p class="soft">{weakWords.lowNumber(said.basis, codeWords(hazard))}</p>
        </>
      )}
      {unknown.length > 0 && (
        <>
          <h4>{weakWords.noNumber(unknown.length)}</h4>
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
          <h4>{weakWords.thereByKartFileLooked}</h4>
          <ul class="rows">
            {latent.map(link => (
              <li key={link.id}>
                <Glyph sign="waiting" />
                <div>{link.says}</div>
                <span class="side">{link.likely && chanceAlone(link.likely.words)}</span>
              </li>
            ))}
          </ul>
        </>
      )}
    </section>
  );
}

/** '2 in 1,000' of '2 in 1,000, between fewer than 1 and 4'. */
export const chanceAlone = (words: string): string => words.split(', ')[0] ?? words;

/** The published scheme goes by the chance over the life or the season, not over one event. */
function codeWords({ season }: AskedHazard): string {
  if (season === null) return '';
  const { code, level, events, whole } = season;
  const over = weakWords.overSeasonOfEvents(events);
  return weakWords.codeOrdersHazards(over, whole, code, level.toLowerCase());
}
