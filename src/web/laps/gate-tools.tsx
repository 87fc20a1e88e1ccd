/** The gates on the map: proposed, slid along the way by large buttons, or set where a finger taps. */
import { useMemo, useState } from 'preact/hooks';
import { type Gate, type GateLine, gateAcross, lineOf, type Plane, type Point, planeAt } from '../../laps/index.ts';
import { lapsCount } from '../words/laps/reads.ts';
import { lapsWords } from '../words/laps/sheet.tsx';
import type { Found, Gates, ReadLog } from './log.ts';
import { closeView, TrackMap, wholeView } from './map.tsx';
import { alongOf, gateAt, slid, type Way, wayOf } from './way.ts';

type Tapping = { readonly kind: 'no' } | { readonly kind: 'one' } | { readonly kind: 'two'; readonly first?: Point };

const NARROWEST = 2; // m to either side
const WIDEST = 25;

export function GateTools(props: {
  readonly name: string; // of the log
  readonly log: ReadLog;
  readonly found: Found;
  readonly onGates: (gates: Gates, turn?: number) => void;
}) {
  const { name, log, found, onGates } = props;
  const { gates } = found;
  const plane = useMemo(() => planeAt(log.plane, log.plane.height), [log]);
  const way = useMemo(() => found.way && wayOf(found.way), [found.way]);
  const [chosen, setChosen] = useState(0);
  const [close, setClose] = useState<Point>();
  const [tapping, setTapping] = useState<Tapping>({ kind: 'no' });
  const at = Math.min(chosen, (gates?.length ?? 1) - 1);
  const lines = (gates ?? []).map(gate => lineOf(gate, plane));
  const line = lines[at];
  const whole = useMemo(() => wholeView(log.outline), [log]);
  const put = (next: GateLine): void => {
    const gate = gateAcross(next, plane);
    const ordered = inOrder(replaced(gates, at, gate), plane, way);
    onGates(ordered);
    setChosen(ordered.indexOf(gate));
    if (close) setClose(next.middle);
  };
  const tap = (place: Point): void => {
    if (tapping.kind === 'one' && way) {
      put(gateAt(way, alongOf(way, place), line?.half ?? 8));
      setClose(place);
      setTapping({ kind: 'no' });
    } else if (tapping.kind === 'two' && close === undefined) setClose(place);
    else if (tapping.kind === 'two' && tapping.first === undefined) setTapping({ kind: 'two', first: place });
    else if (tapping.kind === 'two' && tapping.first) {
      setTapping({ kind: 'no' });
      const wide = Math.hypot(place.x - tapping.first.x, place.y - tapping.first.y);
      if (wide < 1 || wide > 200) return;
      const { x, y } = tapping.first;
      onGates(replaced(gates, at, { left: plane.back({ x, y }), right: plane.back(place) }), at);
    }
  };
  return (
    <section class="group" aria-label={lapsWords.gateOf(name)}>
      <h2>
        {lapsWords.theGate}{' '}
        <span>
          {found.track ? lapsWords.gateAsAt(found.track) : gates ? lapsWords.gatesSet(lines.length) : lapsWords.noneYet}
        </span>
      </h2>
      <figure class="sheet">
        <TrackMap
          title={mapTitle(found)}
          view={close ? closeView(close) : whole}
          outline={log.outline}
          way={found.way}
          gates={lines.map((each, n) => ({
            line: each,
            name: n === 0 ? lapsWords.theGate : String(n),
            chosen: n === at,
          }))}
          taps={tapping.kind === 'two' && tapping.first ? [tapping.first] : []}
          onTap={tapping.kind === 'no' ? undefined : tap}
        />
        <figcaption class="soft" aria-live="polite">
          {tapping.kind === 'one'
            ? lapsWords.tapTrackWhereGate
            : tapping.kind === 'two'
              ? close === undefined
                ? lapsWords.tapNearGateMapComes
                : tapping.first
                  ? lapsWords.nowTapOtherEdge
                  : lapsWords.tapOneEdgeOfTrack
              : lapsWords.greyWhereKartHasBeen}
        </figcaption>
      </figure>
      <details class="group no-print">
        <summary>
          <h2>{lapsWords.moveItAddSectors}</h2>
        </summary>
        {gates && gates.length > 1 && (
          <div class="tiles of-4 gate-names">
            {gates.map((gate, n) => (
              <button
                key={`${gate.left.lat} ${gate.left.lon}`}
                type="button"
                class={`button ${n === at ? 'main' : 'plain'}`}
                aria-pressed={n === at}
                onClick={() => {
                  setChosen(n);
                  if (close && lines[n]) setClose(lines[n].middle);
                }}
              >
                {lapsWords.lineOfGate(n)}
              </button>
            ))}
          </div>
        )}
        {way && line && (
          <fieldset class="gate-moves">
            <legend>{lapsWords.moveEndOfSector(at)}</legend>
            {([-10, -1, 1, 10] as const).map(by => (
              <button key={by} type="button" class="button" onClick={() => put(slid(way, line, by))}>
                {by < 0 ? `◂ ${-by} m` : `${by} m ▸`}
                <span class="unseen">{lapsWords.back(by)}</span>
              </button>
            ))}
            <button
              type="button"
              class="button plain"
              disabled={line.half <= NARROWEST}
              onClick={() => put({ ...line, half: Math.max(NARROWEST, line.half - 1) })}
            >
              {lapsWords.narrower}
            </button>
            <button
              type="button"
              class="button plain"
              disabled={line.half >= WIDEST}
              onClick={() => put({ ...line, half: Math.min(WIDEST, line.half + 1) })}
            >
              {lapsWords.wider}
            </button>
            <span class="gate-width">{lapsWords.mWide((2 * line.half).toFixed(0))}</span>
          </fieldset>
        )}
        <div class="answers">
          {line && (
            <button
              type="button"
              class="button"
              aria-pressed={close !== undefined}
              onClick={() => setClose(close ? undefined : line.middle)}
            >
              {close ? lapsWords.wholeTrack : lapsWords.closer}
            </button>
          )}
          {way && (
            <button
              type="button"
              class="button"
              aria-pressed={tapping.kind === 'one'}
              onClick={() => setTapping({ kind: tapping.kind === 'one' ? 'no' : 'one' })}
            >
              {lapsWords.tapItsPlace}
            </button>
          )}
          <button
            type="button"
            class="button"
            aria-pressed={tapping.kind === 'two'}
            onClick={() => setTapping({ kind: tapping.kind === 'two' ? 'no' : 'two' })}
          >
            {lapsWords.tapBothEdges}
          </button>
          {log.proposed && (
            <button
              type="button"
              class="button"
              onClick={() => {
                if (log.proposed) onGates(replaced(gates, 0, log.proposed));
                setClose(undefined);
              }}
            >
              {lapsWords.asProposed}
            </button>
          )}
          {way && gates && gates.length < 9 && (
            <button
              type="button"
              class="button"
              onClick={() => onGates(inOrder([...gates, gateAcross(newSplit(way, lines), plane)], plane, way))}
            >
              {lapsWords.addSector}
            </button>
          )}
          {gates && at > 0 && (
            <button
              type="button"
              class="button plain"
              onClick={() => {
                const [first, ...rest] = gates;
                onGates([first, ...rest.filter((_, n) => n + 1 !== at)]);
                setChosen(0);
              }}
            >
              {lapsWords.removeSectorEnd(at)}
            </button>
          )}
        </div>
      </details>
    </section>
  );
}

const mapTitle = ({ gates, laps }: Found): string =>
  lapsWords.trackAsLogDrew(
    gates ? `${lapsWords.oneGate(gates.length)}, ${lapsCount(laps.length)}.` : lapsWords.noGateYet,
  );

function replaced(gates: Gates | undefined, at: number, gate: Gate): Gates {
  if (gates === undefined || at === 0) return [gate, ...(gates?.slice(1) ?? [])];
  const [first, ...rest] = gates;
  return [first, ...rest.map((each, n) => (n + 1 === at ? gate : each))];
}

/** Sectors end in the order they are driven. */
function inOrder(gates: Gates, plane: Plane, way: Way | undefined): Gates {
  if (way === undefined) return gates;
  const [first, ...rest] = gates;
  const start = alongOf(way, lineOf(first, plane).middle);
  const past = (gate: Gate): number => (alongOf(way, lineOf(gate, plane).middle) - start + way.length) % way.length;
  return [first, ...rest.toSorted((a, b) => past(a) - past(b))];
}

/** In the middle of the longest sector there is. */
function newSplit(way: Way, lines: readonly GateLine[]): GateLine {
  const ends = lines.map(({ middle }) => alongOf(way, middle));
  const spans = ends.map((from, n) => {
    const to = ends[(n + 1) % ends.length] ?? from;
    return { from, long: (to - from + way.length) % way.length || way.length };
  });
  const longest = spans.reduce((a, b) => (b.long > a.long ? b : a));
  return gateAt(way, longest.from + longest.long / 2, lines[0]?.half ?? 8);
}
