/** Which second retentions take most away for the minutes and the money there are, and what a little more time would bring. */
import { useState } from 'preact/hooks';
import type { WeakLinksAnswer } from '../../app/index.ts';
import type { Fitting, Outcome, Worth } from '../../risk/index.ts';
import { PlateFigure } from '../numbers/answered.tsx';
import { notANumber } from '../typed-number.ts';
import { weakWords } from '../words/weak.tsx';
import { drawFrontier } from './frontier.tsx';
import { Confirm, type Jobs, Made } from './job.tsx';

const FEW = 6;

export type Typed = { readonly minutes: string; readonly money: string };

export function Seconds(props: {
  readonly answer: WeakLinksAnswer;
  readonly typed: Typed;
  readonly onTyped: (typed: Typed) => void;
  readonly jobs: Jobs;
}) {
  const { answer, typed, onTyped, jobs } = props;
  const { chosen, more, frontier, candidates } = answer.seconds;
  const had = new Set(chosen.fittings.map(keyOf));
  const added = more?.outcome.fittings.filter(one => !had.has(keyOf(one))) ?? [];
  const drawn = drawFrontier(frontier, name => hazardOf(answer, name));
  const [all, setAll] = useState(false);
  const fittings = chosen.fittings.toSorted((a, b) => (a.singleOf ?? 5) - (b.singleOf ?? 5));
  return (
    <section class="group pays no-print" id="pays" aria-label={weakWords.whichSecondRetention}>
      <h2>{weakWords.whichSecondRetention}</h2>
      <p class="soft">{weakWords.singlePointsOfSeverity}</p>
      <form class="budget" onSubmit={e => e.preventDefault()}>
        <label>
          {weakWords.minutesThere}
          <input
            inputMode="decimal"
            placeholder={weakWords.noLimit}
            value={typed.minutes}
            onInput={e => onTyped({ ...typed, minutes: e.currentTarget.value })}
          />
        </label>
        <label>
          {weakWords.moneyThere}
          <input
            inputMode="decimal"
            placeholder={weakWords.noLimit}
            value={typed.money}
            onInput={e => onTyped({ ...typed, money: e.currentTarget.value })}
          />
        </label>
      </form>
      <NotNumbers typed={typed} />
      {jobs.made.map(wanted => (
        <Made key={wanted.joint} wanted={wanted} jobs={jobs} />
      ))}
      {candidates.length === 0 && <p class="note">{weakWords.thereIsNoJointLeft}</p>}
      {candidates.length > 0 && chosen.fittings.length === 0 && <p class="note">{weakWords.nothingCanBeFitted}</p>}
      <ol class="fittings">
        {(all ? fittings : fittings.slice(0, FEW)).map(one => (
          <FittingRow key={keyOf(one)} one={one} answer={answer} jobs={jobs} />
        ))}
      </ol>
      {fittings.length > FEW && (
        <button type="button" class="button plain wide" onClick={() => setAll(!all)}>
          {all ? weakWords.onlyFirst(FEW) : weakWords.all(fittings.length)}
        </button>
      )}
      {chosen.fittings.length > 0 && (
        <p>
          <b>{weakWords.minOfMoney(chosen.minutes, chosen.money)}</b> {leftWords(chosen)}
        </p>
      )}
      {chosen.hazards.length > 0 && (
        <table class="figures">
          <thead>
            <tr>
              <th scope="col">{weakWords.withAllOfThese}</th>
              <th scope="col">{weakWords.overEventFrom}</th>
            </tr>
          </thead>
          <tbody>
            {chosen.hazards.map(({ function: name, severity, words }) => (
              <tr key={name}>
                <th scope="row">{weakWords.hazardWithSeverity(hazardOf(answer, name), severity)}</th>
                <td>{words}</td>
              </tr>
            ))}
          </tbody>
        </table>
      )}
      {more && (
        <div class="note need">
          <p>
            <b>{weakWords.withMoreMinutes(more.minutes)}</b>: {added.map(fittingWords).join('; ')}.{' '}
            {leftWords(more.outcome)}
          </p>
        </div>
      )}
      {drawn && <PlateFigure drawn={drawn} />}
    </section>
  );
}

function NotNumbers({ typed: { minutes, money } }: { readonly typed: Typed }) {
  const wrong = [notANumber(minutes, 'minutes', '40'), notANumber(money, 'money', '25')].filter(said => said);
  return wrong.map(said => (
    <p class="note need" role="alert" key={said}>
      {weakWords.untilThenItCounts(said ?? '')}
    </p>
  ));
}

function FittingRow(props: { readonly one: Fitting; readonly answer: WeakLinksAnswer; readonly jobs: Jobs }) {
  const { one, answer, jobs } = props;
  const buys = buysOf(answer, one);
  return (
    <li>
      <h3>{weakWords.on(one.retention, one.joint.replace('/', ', '))}</h3>
      <p>
        {weakWords.minutesMoneyAndSingle(
          one.minutes,
          one.money,
          one.singleOf === null ? '' : weakWords.takesSinglePoint(one.singleOf),
        )}
      </p>
      {buys.map(({ hazard, words }) => (
        <p class="soft" key={hazard}>
          {weakWords.atBest(hazard, words)}
        </p>
      ))}
      {one.needs !== '' && <p class="soft">{weakWords.needs(one.needs)}</p>}
      <Confirm adding={{ joint: one.joint, retention: one.retention, needs: one.needs }} jobs={jobs}>
        {weakWords.makeItJob}
      </Confirm>
    </li>
  );
}

/** What the joint means for each hazard it brings about alone: a second can buy no more than that. */
const buysOf = ({ hazards }: WeakLinksAnswer, { joint }: Fitting) =>
  hazards.flatMap(({ hazard, links }) =>
    links
      .filter(link => link.joint === joint && link.sort === 'joint' && link.ifPerfect < (1 - SHOWS) * topOf(links))
      .map(({ buys }) => ({ hazard, words: buys })),
  );

/** A smaller change than this does not show in two figures. */
const SHOWS = 0.01;
/** A link that buys nothing leaves the hazard as it is. */
const topOf = (links: readonly Worth[]): number => Math.max(...links.map(({ ifPerfect }) => ifPerfect));

const hazardOf = ({ hazards }: WeakLinksAnswer, name: string): string =>
  hazards.find(one => one.function === name)?.hazard ?? name;
const keyOf = ({ joint, retention }: Fitting): string => `${joint} ${retention}`;
const fittingWords = ({ joint, retention, minutes, money }: Fitting): string =>
  weakWords.onMinOfMoney(retention, joint.replace('/', ', '), minutes, money);

const leftWords = ({ singlesLeft: { severity1, severity2 } }: Outcome): string =>
  weakWords.jointsLeftThatAloneAreEnough(severity1, severity2);
