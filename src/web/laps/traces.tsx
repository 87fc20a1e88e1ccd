/**
 * A lap over the distance: one drawing under the other, all of the same part of it. What is shown is a place in a strip that
 * scrolls: a finger, a wheel, the keys and the buttons move it, nothing is drawn anew, and the page scrolls on as ever.
 */
import { useLayoutEffect, useMemo, useRef, useState } from 'preact/hooks';
import { tracesWords } from '../words/laps/traces.ts';
import { drawnOf, LapFrames, LapStrip, lengthIn, type Plot, STRIP } from './lap-plots.tsx';

/** Nearer than this there is little to see between two fixes, m. */
const LEAST_SHOWN = 40;
/** A press of a button moves by half of what is shown: the other half stays. */
const PRESS = 0.5;
/** The strip has come to rest, ms. */
const RESTS = 150;

export function LapTraces({ name, plots }: { readonly name: string; readonly plots: readonly Plot[] }) {
  const drawn = useMemo(() => plots.map(drawnOf), plots);
  const length = lengthIn(plots);
  const [times, setTimes] = useState(1);
  const [from, setFrom] = useState(0); // m
  const strip = useRef<HTMLElement>(null);
  const middle = useRef(length / 2); // m
  const rest = useRef<ReturnType<typeof setTimeout> | undefined>(undefined);
  const shows = length / times;

  const read = (): number => {
    const at = strip.current;
    return at === null ? 0 : at.scrollLeft / pixelsOf(at, times, length);
  };
  const atRest = (): void => {
    const start = Math.min(Math.max(0, read()), length - shows);
    middle.current = start + shows / 2;
    setFrom(start);
  };
  const look = (next: number): void => {
    if (next < 1 || length / next < LEAST_SHOWN) return;
    clearTimeout(rest.current);
    middle.current = read() + shows / 2;
    setTimes(next);
  };
  const move = (way: -1 | 1): void => {
    const at = strip.current;
    if (at === null) return;
    // At once: the next press goes on from there, however slow the device draws.
    at.scrollBy({ left: way * PRESS * shows * pixelsOf(at, times, length), behavior: 'instant' });
  };
  useLayoutEffect(() => {
    const at = strip.current;
    if (at === null) return;
    at.scrollTo({ left: (middle.current - shows / 2) * pixelsOf(at, times, length), behavior: 'instant' });
    atRest();
    return () => clearTimeout(rest.current);
  }, [times, length]);

  const sheets = useMemo(() => <LapStrip drawn={drawn} times={times} />, [drawn, times]);
  const frames = useMemo(() => <LapFrames drawn={drawn} />, [drawn]);
  const whole = useMemo(() => times > 1 && <LapStrip drawn={drawn} times={1} />, [drawn, times > 1]);
  const near = times > 1;
  return (
    <>
      <figure class="sheet">
        <div class="traces">
          <section
            class={`trace-strip ${near ? 'near no-print' : ''}`}
            // biome-ignore lint/a11y/noNoninteractiveTabindex: what scrolls sideways must be reached by keys
            tabIndex={0}
            aria-label={tracesWords.moved(name)}
            ref={strip}
            onScroll={() => {
              clearTimeout(rest.current);
              rest.current = setTimeout(atRest, RESTS);
            }}
            onPointerDown={dragged}
            onKeyDown={e => {
              if (e.ctrlKey || e.metaKey || e.altKey) return;
              if (e.key === '+' || e.key === '=') look(2 * times);
              else if (e.key === '-') look(times / 2);
              else if (e.key === 'Home' && near) look(1);
              else return;
              e.preventDefault();
            }}
          >
            {sheets}
          </section>
          {near && <div class="trace-strip only-print">{whole}</div>}
          {frames}
        </div>
      </figure>
      <fieldset class="trace-moves no-print">
        <legend class="unseen">{tracesWords.partShown}</legend>
        <Move text={tracesWords.left} can={near && from > 0} press={() => move(-1)} />
        <Move text={tracesWords.wider} can={near} press={() => look(times / 2)} />
        <Move text={tracesWords.all} can={near} press={() => look(1)} />
        <Move text={tracesWords.nearer} can={length / (2 * times) >= LEAST_SHOWN} press={() => look(2 * times)} />
        <Move text={tracesWords.right} can={near && from < length - shows - 0.5} press={() => move(1)} />
      </fieldset>
      <p class="soft no-print" role="status">
        {near
          ? tracesWords.part(from.toFixed(0), (from + shows).toFixed(0), length.toFixed(0))
          : tracesWords.wholeLap(length.toFixed(0))}
      </p>
    </>
  );
}

/** One that cannot keeps the focus: the next press of a key belongs to it still. */
function Move({ text, can, press }: { readonly text: string; readonly can: boolean; readonly press: () => void }) {
  return (
    <button type="button" class="button" aria-disabled={!can} onClick={() => can && press()}>
      {text}
    </button>
  );
}

/** Pixels of the strip for a metre. */
const pixelsOf = (strip: HTMLElement, times: number, length: number): number =>
  ((strip.clientWidth / STRIP.seen) * STRIP.drawn * times) / length;

/** A mouse takes hold of the strip; a finger has the browser's own way, and scrolls the page with it. */
function dragged(e: PointerEvent & { readonly currentTarget: HTMLElement }): void {
  const strip = e.currentTarget;
  if (e.pointerType !== 'mouse' || e.button !== 0 || strip.scrollWidth <= strip.clientWidth) return;
  const start = strip.scrollLeft + e.clientX;
  const drag = ({ clientX }: PointerEvent): void => strip.scrollTo({ left: start - clientX, behavior: 'instant' });
  const end = (): void => {
    strip.removeEventListener('pointermove', drag);
    strip.removeEventListener('lostpointercapture', end);
  };
  strip.addEventListener('pointermove', drag);
  strip.addEventListener('lostpointercapture', end);
  strip.setPointerCapture(e.pointerId);
}
