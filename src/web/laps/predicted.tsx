/** A predicted lap as it is read: sprockets, what a change is worth, the driven lap beside it, and what it rests on. */
import type { LapsPredicted, PredictedWhole } from '../../app/index.ts';
import { Traces } from './traces.tsx';
import { lapsCount, lapText } from './words.ts';

export function Predicted({ of }: { readonly of: PredictedWhole }) {
  const { lap, driven, track, say } = of;
  return (
    <>
      <section class="group" aria-label="Said of it">
        <p class="verdict-words">
          <b>{say[0]}</b>
        </p>
        <p>
          Predicted {lapText(lap.time)} s, driven {lapText(driven.time)} s in lap {driven.lap}:{' '}
          {Math.round(track.length)} m from the middle of {lapsCount(track.laps)}, {kmh(lap.vMin)} to {kmh(lap.vMax)}{' '}
          km/h, {lap.upshifts} upshifts.
        </p>
        {say.slice(1).map(text => (
          <p key={text} class="soft">
            {text}
          </p>
        ))}
      </section>
      <div class="log-page">
        {of.sprockets !== null && <Sprockets choice={of.sprockets} />}
        <Worth sensitivities={of.sensitivities} />
      </div>
      <BesideDriven of={of} />
      <ReckonedWith figures={of.figures} />
    </>
  );
}

function Sprockets({ choice: { pairs, tried } }: { readonly choice: NonNullable<LapsPredicted['sprockets']> }) {
  return (
    <section class="group" aria-label="Sprockets in the box">
      <h2>
        Sprockets <span>every pair in the box</span>
      </h2>
      <table class="lap-table narrow">
        <thead>
          <tr>
            <th scope="col">Teeth</th>
            <th scope="col">Ratio</th>
            <th scope="col">Lap, s</th>
            <th scope="col">Behind, s</th>
            <th scope="col">So it is</th>
          </tr>
        </thead>
        <tbody>
          {pairs.map(({ front, rear, ratio, time, behind, within, level }) => (
            <tr key={`${front}/${rear}`}>
              <th scope="row">
                {front}/{rear}
              </th>
              <td>{ratio.toFixed(3)}</td>
              <td>{lapText(time)}</td>
              <td>
                {signed(behind)}
                {behind > 0 && <small class="soft">± {within.toFixed(2)}</small>}
              </td>
              <td>{level ? <b>level</b> : 'slower'}</td>
            </tr>
          ))}
        </tbody>
      </table>
      <p class="soft">
        Level: behind by no more than what is not known of the kart can make of it.
        {tried > pairs.length && ` ${tried - pairs.length} of ${tried} pairs do not get the kart round.`} Hold the
        engine below the speed its maker allows.
      </p>
    </section>
  );
}

function Worth({ sensitivities }: Pick<LapsPredicted, 'sensitivities'>) {
  return (
    <section class="group" aria-label="What a change is worth">
      <h2>
        What a change is worth <span>in a lap</span>
      </h2>
      <table class="lap-table narrow">
        <thead>
          <tr>
            <th scope="col">More of</th>
            <th scope="col">By</th>
            <th scope="col">Lap, ms</th>
          </tr>
        </thead>
        <tbody>
          {sensitivities.map(({ change, by, seconds }) => (
            <tr key={change}>
              <th scope="row">{change}</th>
              <td>{by}</td>
              <td>
                {signed(seconds * 1000, 0)}
                <small>{Math.abs(seconds) < 0.0005 ? 'no difference' : seconds < 0 ? 'quicker' : 'slower'}</small>
              </td>
            </tr>
          ))}
        </tbody>
      </table>
    </section>
  );
}

function BesideDriven({ of: { beside, lost, slowest, driven } }: { readonly of: PredictedWhole }) {
  const { at, predicted, driven: speed, gap } = beside;
  return (
    <section class="group" aria-label="Driven beside predicted">
      <h2>
        Driven beside predicted <span>lap {driven.lap}, over the distance</span>
      </h2>
      <div class="log-page">
        <figure class="sheet">
          <Traces
            title="Speed predicted and driven over the distance. The table of the corners says how slow both were in each."
            unit="km/h"
            traces={[
              { name: 'predicted', look: 'dashed', x: at, y: predicted.map(v => v * 3.6) },
              { name: 'driven: thick', look: 'signal', x: at, y: speed.map(v => v * 3.6) },
            ]}
          />
          <Traces
            title="Time of the driven lap less the predicted, over the distance. The table says it by tenths of the lap."
            unit="s behind the prediction; below 0 ahead"
            height={110}
            zero
            traces={[{ name: '', look: 'plain', x: at, y: gap }]}
          />
        </figure>
        <Tenths lost={lost} whole={gap.at(-1) ?? Number.NaN} />
        {slowest.length > 0 && <Corners slowest={slowest} />}
      </div>
    </section>
  );
}

function Tenths({ lost, whole }: Pick<LapsPredicted, 'lost'> & { readonly whole: number }) {
  return (
    <table class="lap-table narrow">
      <thead>
        <tr>
          <th scope="col">From, to, m</th>
          <th scope="col">Driven behind, s</th>
        </tr>
      </thead>
      <tbody>
        {lost.map(({ from, to, seconds }) => (
          <tr key={from}>
            <th scope="row">{`${Math.round(from)}\u00a0to\u00a0${Math.round(to)}`}</th>
            <td>{signed(seconds)}</td>
          </tr>
        ))}
        <tr>
          <th scope="row">the whole lap</th>
          <td>
            <b>{signed(whole)}</b>
          </td>
        </tr>
      </tbody>
    </table>
  );
}

function Corners({ slowest }: Pick<LapsPredicted, 'slowest'>) {
  return (
    <table class="lap-table narrow">
      <thead>
        <tr>
          <th scope="col">Slowest in, km/h</th>
          <th scope="col">Predicted</th>
          <th scope="col">Driven</th>
        </tr>
      </thead>
      <tbody>
        {slowest.map(({ corner, predicted, driven }) => (
          <tr key={corner}>
            <th scope="row">{corner}</th>
            <td>{kmh(predicted)}</td>
            <td>{kmh(driven)}</td>
          </tr>
        ))}
      </tbody>
    </table>
  );
}

function ReckonedWith({ figures }: Pick<LapsPredicted, 'figures'>) {
  const isGuess = ({ from }: LapsPredicted['figures'][number]): boolean =>
    from === 'starting guess' || from === 'template';
  const guessed = figures.filter(isGuess);
  const known = figures.filter(figure => !isGuess(figure));
  return (
    <section class="group" aria-label="Reckoned with">
      <h2>
        Reckoned with{' '}
        <span>{known.length === 0 ? 'guesses only' : `${known.length} known, ${guessed.length} guessed`}</span>
      </h2>
      <table class="lap-table narrow">
        <thead>
          <tr>
            <th scope="col">Of the kart, and what says so</th>
            <th scope="col">Value, from</th>
          </tr>
        </thead>
        <tbody>
          {[...known, ...guessed].map(({ what, value, unit, spread, from, why }) => (
            <tr key={what}>
              <th scope="row">
                {what}
                {why && <small>{why}</small>}
              </th>
              <td>
                {Number(value.toPrecision(4))}
                {spread !== undefined && ` ± ${Number(spread.toPrecision(2))}`}
                {unit !== '1' && ` ${unit}`}
                <small>
                  <b>{from}</b>
                </small>
              </td>
            </tr>
          ))}
        </tbody>
      </table>
    </section>
  );
}

const kmh = (speed: number): string => (speed * 3.6).toFixed(0);

const signed = (value: number, digits = 2): string => {
  const text = Math.abs(value).toFixed(digits);
  return Number(text) === 0 ? text : `${value < 0 ? '−' : '+'}${text}`;
};
