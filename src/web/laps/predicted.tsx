/** A predicted lap as it is read: sprockets, what a change is worth, the driven lap beside it, and what it rests on. */
import type { LapsPredicted, PredictedWhole } from '../../app/index.ts';
import { predictWords } from '../words/laps/predict.ts';
import { lapsCount, lapText } from '../words/laps/reads.ts';
import { SpeedAndTime } from './speed-and-time.tsx';

export function Predicted({ of }: { readonly of: PredictedWhole }) {
  const { lap, driven, track, say } = of;
  return (
    <>
      <section class="group" aria-label={predictWords.said}>
        <p class="verdict-words">
          <b>{say[0]}</b>
        </p>
        <p>
          {predictWords.predictedSDriven(
            lapText(lap.time),
            lapText(driven.time),
            driven.lap,
            Math.round(track.length),
            lapsCount(track.laps),
            kmh(lap.vMin),
            kmh(lap.vMax),
            lap.upshifts,
          )}
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
    <section class="group" aria-label={predictWords.sprocketsInBox}>
      <h2>
        {predictWords.sprockets} <span>{predictWords.everyPairInBox}</span>
      </h2>
      <table class="lap-table narrow">
        <thead>
          <tr>
            <th scope="col">{predictWords.teeth}</th>
            <th scope="col">{predictWords.ratio}</th>
            <th scope="col">{predictWords.lap}</th>
            <th scope="col">{predictWords.behindS}</th>
            <th scope="col">{predictWords.so}</th>
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
              <td>{level ? <b>{predictWords.level}</b> : predictWords.slower}</td>
            </tr>
          ))}
        </tbody>
      </table>
      <p class="soft">
        {predictWords.levelBehindByNoMore(
          tried > pairs.length ? predictWords.ofPairsDoNotGet(tried - pairs.length, tried) : '',
        )}
      </p>
    </section>
  );
}

function Worth({ sensitivities }: Pick<LapsPredicted, 'sensitivities'>) {
  return (
    <section class="group" aria-label={predictWords.whatChangeIsWorth}>
      <h2>
        {predictWords.whatChangeIsWorth} <span>{predictWords.inLap}</span>
      </h2>
      <table class="lap-table narrow">
        <thead>
          <tr>
            <th scope="col">{predictWords.more}</th>
            <th scope="col">{predictWords.by}</th>
            <th scope="col">{predictWords.lapMs}</th>
          </tr>
        </thead>
        <tbody>
          {sensitivities.map(({ change, by, seconds }) => (
            <tr key={change}>
              <th scope="row">{change}</th>
              <td>{by}</td>
              <td>
                {signed(seconds * 1000, 0)}
                <small>{Math.abs(seconds) < 0.0005 ? predictWords.noDifference : predictWords.quicker(seconds)}</small>
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
    <section class="group" aria-label={predictWords.drivenBesidePredicted}>
      <h2>
        {predictWords.drivenBesidePredicted} <span>{predictWords.lapOverDistance(driven.lap)}</span>
      </h2>
      <div class="log-page">
        <div>
          <SpeedAndTime
            name={predictWords.drivenBesidePredicted}
            at={at}
            dashed={{ name: predictWords.predictedDashed, speed: predicted }}
            thick={{ name: predictWords.drivenThick, speed }}
            speeds={predictWords.speedPredicted}
            behind={{ title: predictWords.timeOfDrivenLapLess, unit: predictWords.sBehindPredictionBelow, y: gap }}
          />
        </div>
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
          <th scope="col">{predictWords.fromToM}</th>
          <th scope="col">{predictWords.drivenBehind}</th>
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
          <th scope="row">{predictWords.wholeLap}</th>
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
          <th scope="col">{predictWords.slowestInKmH}</th>
          <th scope="col">{predictWords.predicted}</th>
          <th scope="col">{predictWords.driven}</th>
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
    <section class="group" aria-label={predictWords.reckoned}>
      <h2>
        {predictWords.reckoned} <span>{predictWords.knownGuessed(known.length, guessed.length)}</span>
      </h2>
      <table class="lap-table narrow">
        <thead>
          <tr>
            <th scope="col">{predictWords.ofKartAndWhatSays}</th>
            <th scope="col">{predictWords.value}</th>
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
