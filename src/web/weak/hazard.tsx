/** One hazard: what alone is enough, on the map and in words; how likely; what each link means; pairs; what is not known. */
import { useState } from 'preact/hooks';
import type { LinkPair, SinglePoint } from '../../risk/index.ts';
import { KartDrawing } from '../drawing/kart-drawing.tsx';
import { partsOff } from '../drawing/parts-off.ts';
import { Glyph } from '../glyph.tsx';
import { hashOf } from '../place.ts';
import type { Snapshot } from '../session.ts';
import { capital } from '../words/reads.ts';
import { weakWords } from '../words/weak.tsx';
import { Job, type Jobs } from './job.tsx';
import { type AskedHazard, Likelihood } from './likelihood.tsx';
import { ALONE, ALONE_WORDS, aloneOf, mapOf } from './map.ts';
import { Worths } from './worths.tsx';

type Props = {
  readonly hazard: AskedHazard;
  readonly event: string | null;
  readonly snapshot: Snapshot;
  readonly jobs: Jobs;
};

export function HazardGroup({ open, ...props }: Props & { readonly open: boolean }) {
  const { hazard } = props;
  const { singlePoints: alone, top, atLeast } = hazard;
  const many = weakWords.aloneIsEnough(alone.length);
  return (
    <section class="hazard" id={`hazard ${hazard.function}`} aria-label={hazard.hazard}>
      <a
        class="hazard-head"
        href={hashOf({ sheet: 'weak', about: hazard.function })}
        aria-current={open ? 'true' : undefined}
      >
        <b>{capital(hazard.hazard)}</b>
        <span class="soft">{weakWords.severity(hazard.severity)}</span>
        <span>{hazard.cutSets === null ? weakWords.tooLargeToWorkOut : many}</span>
        <span class="soft">
          {top ? top.words : atLeast ? weakWords.notKnownAtLeast(atLeast.words) : weakWords.howLikelyNotKnown}
        </span>
      </a>
      {open && <Opened {...props} />}
    </section>
  );
}

function Opened({ hazard, event, snapshot, jobs }: Props) {
  const { kart } = snapshot;
  const [chosen, setChosen] = useState<number>();
  const marks = mapOf(kart, hazard.singlePoints);
  const numberOf = (point: SinglePoint): number | undefined =>
    marks.find(({ lines }) => lines.some(line => line.point === point))?.n;
  const pick = (n: number): void => {
    setChosen(n);
    document.getElementById(rowId(hazard, n))?.scrollIntoView({ block: 'center' });
  };
  const find = (n: number): void => {
    setChosen(n);
    document.getElementById(mapId(hazard))?.scrollIntoView({ block: 'nearest' });
  };
  if (hazard.cutSets === null) return <p class="note">{weakWords.tooLargeToWorkOutNothing}</p>;
  const used = ALONE.filter(kind => marks.some(({ lines }) => lines.some(line => line.kind === kind)));
  return (
    <>
      {hazard.singlePoints.length === 0 ? (
        <p class="note">{weakWords.nothingAloneIsEnough}</p>
      ) : (
        <div class="kart-page head-gap">
          <figure class="sheet map" id={mapId(hazard)}>
            <KartDrawing
              kart={kart}
              marks={marks}
              off={partsOff(snapshot)}
              picking={{ chosen, pick }}
              title={weakWords.kartFromAbovePlaces(kart.name, marks.length, hazard.hazard)}
            />
            <figcaption>
              <p class="legend">
                {used.map(kind => (
                  <span key={kind}>
                    <Glyph sign={kind} /> {ALONE_WORDS[kind]}
                  </span>
                ))}
              </p>
            </figcaption>
          </figure>
          <ul class="alone">
            {hazard.singlePoints.map((point, i) => {
              const n = numberOf(point);
              const first = hazard.singlePoints.findIndex(one => numberOf(one) === n) === i;
              return (
                <li
                  key={point.id}
                  id={first && n !== undefined ? rowId(hazard, n) : undefined}
                  class={n !== undefined && n === chosen ? 'chosen' : undefined}
                >
                  {n === undefined ? (
                    <span />
                  ) : (
                    <button
                      type="button"
                      class="button at"
                      aria-label={weakWords.placeOnMap(n)}
                      onClick={() => find(n)}
                    >
                      <Glyph sign={aloneOf(point)} />
                      {n}
                    </button>
                  )}
                  <div>
                    <p>{point.sentence}</p>
                    <p class="soft">
                      {point.likely ? point.likely.words : weakWords.howLikelyNotKnownWhy(point.unknown)}
                    </p>
                    {point.sort === 'part' && point.part !== undefined && (
                      <a class="back" href={hashOf({ sheet: 'lives', about: point.part })}>
                        {weakWords.howLongItLasts}
                      </a>
                    )}
                    <Job point={point} jobs={jobs} />
                  </div>
                </li>
              );
            })}
          </ul>
        </div>
      )}
      <Likelihood hazard={hazard} event={event} />
      <Worths hazard={hazard} />
      <Pairs hazard={hazard} />
    </>
  );
}

const mapId = (hazard: AskedHazard): string => `map ${hazard.function}`;
const rowId = (hazard: AskedHazard, n: number): string => `${hazard.function} ${n}`;

function Pairs({ hazard: { pairs, cutSets } }: { readonly hazard: AskedHazard }) {
  const [, two = 0, ...more] = cutSets?.byOrder ?? [];
  if (two === 0 && more.length === 0) return null;
  const rest = more.map((sets, n) => `${sets.toLocaleString('en-GB')} of ${n + 3}`).join(', ');
  return (
    <details class="group">
      <summary>
        <h3>
          {weakWords.twoTogether} <span>{two.toLocaleString('en-GB')}</span>
        </h3>
      </summary>
      {two > pairs.length && <p class="soft">{weakWords.theLikeliest(pairs.length)}</p>}
      <ul class="rows">
        {pairs.map(pair => (
          <PairRow key={pair.ids.join(' + ')} pair={pair} />
        ))}
      </ul>
      {rest !== '' && <p class="soft">{weakWords.moreThatAreEnoughOnly(rest)}</p>}
    </details>
  );
}

const PairRow = ({ pair: { says, likely } }: { readonly pair: LinkPair }) => (
  <li>
    <Glyph sign="together" />
    <div>
      {says[0]} <b>{weakWords.and}</b> {says[1]}
    </div>
    <span class="side">{likely?.words.split(',')[0] ?? weakWords.notKnown}</span>
  </li>
);
