/** What is typed, tapped and stepped at the track, each with what was refused about it right beneath. */
import type { ComponentChildren } from 'preact';
import type { Problem } from '../../app/index.ts';
import { TYRES, type Tyre } from '../../book/index.ts';
import { ownUnitOf } from '../choice/choice.ts';
import { Refused } from '../parts.tsx';
import { capital } from '../words/reads.ts';
import { trackWords } from '../words/track.tsx';
import type { Typed } from './said.ts';

/** A form under hand: what stands in it, what was refused, and the way to type. */
export type Asking = {
  readonly form: string;
  readonly typed: Typed;
  readonly problemsAt: (key: string) => readonly Problem[];
  readonly put: (key: string, text: string) => void;
};
type Of = { readonly asking: Asking; readonly at: string; readonly label: string; readonly hint?: string };

/** An id may hold no space. */
const idOf = ({ form }: Asking, key: string): string => `${form}-${key.replaceAll(' ', '-')}`;

/** One number; its unit stands beside it, and another may be typed with it. */
export function Entry({ asking, at, label, hint, unit }: Of & { readonly unit?: string }) {
  const problems = asking.problemsAt(at);
  const id = idOf(asking, at);
  return (
    <div class="entry-field">
      <label for={id}>{label}</label>
      <div class="with-unit">
        <Typing asking={asking} at={at} {...(hint === undefined ? {} : { describedBy: `${id}-hint` })} />
        {unit !== undefined && <span>{ownUnitOf(unit)}</span>}
      </div>
      {hint !== undefined && (
        <p class="soft" id={`${id}-hint`}>
          {hint}
        </p>
      )}
      <Refused problems={problems} />
    </div>
  );
}

function Typing(props: { readonly asking: Asking; readonly at: string; readonly describedBy?: string }) {
  const { asking, at, describedBy } = props;
  return (
    <input
      id={idOf(asking, at)}
      value={asking.typed[at] ?? ''}
      inputMode="decimal"
      autocomplete="off"
      autocapitalize="off"
      aria-invalid={asking.problemsAt(at).length > 0}
      {...(describedBy === undefined ? {} : { 'aria-describedby': describedBy })}
      onInput={e => asking.put(at, e.currentTarget.value)}
    />
  );
}

/** A count that is near what it was: one press either way, or typed. */
export function Stepper({ asking, at, label, unit }: Of & { readonly unit?: string }) {
  const id = idOf(asking, at);
  const now = Number((asking.typed[at] ?? '').replace(',', '.'));
  const step = (by: number): void =>
    asking.put(at, String(Math.max(1, (Number.isFinite(now) ? Math.round(now) : 0) + by)));
  return (
    <div class="entry-field">
      <label for={id}>
        {label}
        {unit !== undefined && <span class="soft"> {unit}</span>}
      </label>
      <div class="stepper">
        <button type="button" class="button" aria-label={trackWords.oneLess(label)} onClick={() => step(-1)}>
          −
        </button>
        <Typing asking={asking} at={at} />
        <button type="button" class="button" aria-label={trackWords.oneMore(label)} onClick={() => step(1)}>
          +
        </button>
      </div>
      <Refused problems={asking.problemsAt(at)} />
    </div>
  );
}

/** A few answers, each as large as a glove; the one that is taken has its dot filled. */
export function Tiles(
  props: Of & { readonly choices: readonly (readonly [value: string, text: string, soft?: string])[] },
) {
  const { asking, at, label, hint, choices } = props;
  return (
    <fieldset class="entry-field">
      <legend>{label}</legend>
      <div class={`tiles of-${choices.length}`}>
        {choices.map(([value, text, soft]) => (
          <label key={value} class="tile">
            <input
              type="radio"
              name={idOf(asking, at)}
              checked={(asking.typed[at] ?? '') === value}
              onChange={() => asking.put(at, value)}
            />
            <span>
              {text}
              {soft !== undefined && <small class="soft">{soft}</small>}
            </span>
          </label>
        ))}
      </div>
      {hint !== undefined && <p class="soft">{hint}</p>}
      <Refused problems={asking.problemsAt(at)} />
    </fieldset>
  );
}

export function Tick({ asking, at, label }: Of) {
  return (
    <label class="tick-box">
      <input
        type="checkbox"
        checked={(asking.typed[at] ?? '') !== ''}
        onChange={e => asking.put(at, e.currentTarget.checked ? 'yes' : '')}
      />
      {label}
    </label>
  );
}

/** Four pressures where the wheels are, seen from above with the front up. */
export function Corners(props: {
  readonly asking: Asking;
  readonly legend: string;
  readonly keyOf: (tyre: Tyre) => string;
  readonly unit: string;
  readonly beneath?: (tyre: Tyre) => ComponentChildren;
}) {
  const { asking, legend, keyOf, unit, beneath } = props;
  return (
    <fieldset class="entry-field">
      <legend>
        {legend} <span class="soft">{unit}</span>
      </legend>
      <div class="corners">
        <KartAbove />
        {TYRES.map(tyre => (
          <div key={tyre} class={`corner ${tyre.replace(' ', '-')}`}>
            <label for={idOf(asking, keyOf(tyre))}>{capital(tyre)}</label>
            <Typing asking={asking} at={keyOf(tyre)} />
            {beneath?.(tyre)}
          </div>
        ))}
      </div>
      {TYRES.map(tyre => (
        <Refused key={tyre} problems={asking.problemsAt(keyOf(tyre))} />
      ))}
    </fieldset>
  );
}

/** Which way the kart points: frame, axles and nose. */
const KartAbove = () => (
  <svg class="kart-above" viewBox="0 0 60 150" aria-hidden="true">
    <path d="M4 34H56M0 116H60M18 20V132M42 20V132M12 20Q30 6 48 20M18 62H42M18 100H42" />
  </svg>
);
