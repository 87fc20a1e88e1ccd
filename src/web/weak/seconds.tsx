/** Which second retentions take most away for the minutes and the money there are, and what a little more time would bring. */
import { useState } from 'preact/hooks';
import type { WeakLinksAnswer } from '../../app/index.ts';
import type { Fitting, Outcome, Worth } from '../../risk/index.ts';
import { PlateFigure } from '../numbers/answered.tsx';
import { notANumber } from '../typed-number.ts';
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
    <section class="group pays" id="pays" aria-label="Which second retention pays most">
      <h2>Which second retention pays most</h2>
      <p class="soft">
        Single points of severity 1 first, then of severity 2, then the most chance taken away. Exact: nothing else for
        as much takes more away. A pair never counts as less likely than what both have in common.
      </p>
      <form class="budget no-print" onSubmit={e => e.preventDefault()}>
        <label>
          Minutes there are
          <input
            inputMode="decimal"
            placeholder="no limit"
            value={typed.minutes}
            onInput={e => onTyped({ ...typed, minutes: e.currentTarget.value })}
          />
        </label>
        <label>
          Money there is
          <input
            inputMode="decimal"
            placeholder="no limit"
            value={typed.money}
            onInput={e => onTyped({ ...typed, money: e.currentTarget.value })}
          />
        </label>
      </form>
      <NotNumbers typed={typed} />
      {jobs.made.map(wanted => (
        <Made key={wanted.joint} wanted={wanted} jobs={jobs} />
      ))}
      {candidates.length === 0 && <p class="note">There is no joint left that a second retention could be added to.</p>}
      {candidates.length > 0 && chosen.fittings.length === 0 && <p class="note">Nothing can be fitted for that.</p>}
      <ol class="fittings">
        {fittings.map((one, n) => (
          <FittingRow key={keyOf(one)} one={one} answer={answer} jobs={jobs} hidden={!all && n >= FEW} />
        ))}
      </ol>
      {fittings.length > FEW && (
        <button type="button" class="button plain wide no-print" onClick={() => setAll(!all)}>
          {all ? `Only the first ${FEW}` : `All ${fittings.length}`}
        </button>
      )}
      {chosen.fittings.length > 0 && (
        <p>
          <b>
            {chosen.minutes} min, {chosen.money} of money.
          </b>{' '}
          {leftWords(chosen)}
        </p>
      )}
      {chosen.hazards.length > 0 && (
        <table class="figures">
          <thead>
            <tr>
              <th scope="col">With all of these</th>
              <th scope="col">over the event, from what is known</th>
            </tr>
          </thead>
          <tbody>
            {chosen.hazards.map(({ function: name, severity, words }) => (
              <tr key={name}>
                <th scope="row">
                  {hazardOf(answer, name)}, severity {severity}
                </th>
                <td>{words}</td>
              </tr>
            ))}
          </tbody>
        </table>
      )}
      {more && (
        <div class="note need">
          <p>
            <b>With {more.minutes} more minutes</b>: {added.map(fittingWords).join('; ')}. {leftWords(more.outcome)}
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
      {said} Until then it counts as no limit.
    </p>
  ));
}

function FittingRow(props: {
  readonly one: Fitting;
  readonly answer: WeakLinksAnswer;
  readonly jobs: Jobs;
  readonly hidden: boolean; // on the screen; paper has them all
}) {
  const { one, answer, jobs, hidden } = props;
  const buys = buysOf(answer, one);
  return (
    <li class={hidden ? 'only-print' : undefined}>
      <h3>
        {one.retention} on {one.joint.replace('/', ', ')}
      </h3>
      <p>
        {one.minutes} min, {one.money} of money
        {one.singleOf === null ? '' : `; takes a single point of severity ${one.singleOf} away`}
      </p>
      {buys.map(({ hazard, words }) => (
        <p class="soft" key={hazard}>
          {hazard}: at best {words}
        </p>
      ))}
      {one.needs !== '' && <p class="soft">Needs {one.needs}.</p>}
      <Confirm adding={{ joint: one.joint, retention: one.retention, needs: one.needs }} jobs={jobs}>
        Make it a job
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
  `${retention} on ${joint.replace('/', ', ')} (${minutes} min, ${money} of money)`;

const leftWords = ({ singlesLeft: { severity1, severity2 } }: Outcome): string =>
  `Joints left that alone are enough and could have a second: ${severity1} of severity 1, ${severity2} of severity 2.`;
