/** The spares box: what to carry for the money and the kilograms there are, how likely the weekend is finished then, what to buy. */
import { withOwnDays } from '../choice/dates.ts';
import '../numbers/numbers.css';
import '../numbers/plates/plates.css';
import '../lives/lives.css';
import './spares.css';
import { useState } from 'preact/hooks';
import type { SparesAnswer } from '../../app/index.ts';
import type { SparesBox } from '../../life/index.ts';
import { Glyph } from '../glyph.tsx';
import { PlateFigure } from '../numbers/answered.tsx';
import { Cell, PrintTitle, Refused } from '../parts.tsx';
import { hashOf, type Keep } from '../place.ts';
import type { Session, Snapshot } from '../session.ts';
import { notANumber, typedNumber } from '../typed-number.ts';
import { capital } from '../words/reads.ts';
import { sparesWords } from '../words/spares.tsx';
import { useSpares } from './asked.ts';
import { RunningCosts } from './costs.tsx';
import { drawFinish } from './finish.tsx';
import { PileRow } from './pile.tsx';

export type SparesProps = { readonly snapshot: Snapshot; readonly session: Session; readonly keep: Keep };

const FIELDS = [
  ['money', sparesWords.moneyThere, sparesWords.noLimit],
  ['kilograms', sparesWords.kilogramsToCarry, sparesWords.noLimit],
  ['minutes', sparesWords.minutesBetweenSessions, sparesWords.noLimit],
] as const;
type Field = (typeof FIELDS)[number][0];

export function Spares({ snapshot, session, keep }: SparesProps) {
  const slot = (field: Field): string => `spares ${field}`;
  const [typed, setTyped] = useState<Readonly<Record<Field, string>>>({
    money: keep.get(slot('money')),
    kilograms: keep.get(slot('kilograms')),
    minutes: keep.get(slot('minutes')),
  });
  const { spares, problems } = useSpares(session, snapshot, {
    money: typedNumber(typed.money),
    kilograms: typedNumber(typed.kilograms),
    minutes: typedNumber(typed.minutes),
  });
  const { kart, fitness } = snapshot;
  return (
    <>
      <PrintTitle title={sparesWords.sparesBox} kart={kart.name} event={fitness.event} invented={kart.invented} />
      <p class="no-print">
        <a class="back" href={hashOf({ sheet: 'weak' })}>
          {sparesWords.whatWouldHurtUs}
        </a>
      </p>
      <h1 class="no-print">{sparesWords.sparesBox}</h1>
      {spares?.box && <p class="note">{spares.box.note}</p>}
      <Refused problems={problems} />
      <form class="budget no-print" onSubmit={e => e.preventDefault()}>
        {FIELDS.map(([field, label, hint]) => (
          <label key={field}>
            {label}
            <input
              inputMode="decimal"
              placeholder={hint}
              value={typed[field]}
              onInput={e => {
                const text = e.currentTarget.value;
                keep.set(slot(field), text);
                setTyped(was => ({ ...was, [field]: text }));
              }}
            />
          </label>
        ))}
      </form>
      {FIELDS.map(([field]) => notANumber(typed[field], field, '40')).map(
        said =>
          said && (
            <p class="note need" role="alert" key={said}>
              {sparesWords.untilThenItCounts(said)}
            </p>
          ),
      )}
      {spares === undefined ? (
        problems.length === 0 && <p class="loading">{sparesWords.reckoningSpares}</p>
      ) : (
        <Answer answer={spares} {...{ snapshot, session }} />
      )}
    </>
  );
}

function Answer(props: { readonly answer: SparesAnswer; readonly snapshot: Snapshot; readonly session: Session }) {
  const { answer, snapshot, session } = props;
  const { box, due, consumables } = answer;
  if (box === null) return <p class="note need">{answer.unknown}</p>;
  const carried = box.piles.filter(({ carry }) => carry > 0);
  const left = box.piles.filter(({ carry }) => carry === 0);
  const drawn = drawFinish(box);
  return (
    <>
      <h2 class="head-gap">{sparesWords.weekendsFinishedOfThose}</h2>
      <div class="cells">
        <Cell label={sparesWords.withNoSpares}>{box.finish.none.words}</Cell>
        <Cell label={sparesWords.withBox}>{box.finish.box.words}</Cell>
        <Cell label={sparesWords.withWhatIsCarriedBelow}>
          <b>{box.finish.chosen.words}</b>
        </Cell>
      </div>
      <div class="lives-page">
        <div>
          <Shopping box={box} />
          {due.length > 0 && (
            <section class="group" aria-labelledby="due-new">
              <h2 id="due-new">
                {sparesWords.newOnesWork} <span>{due.length}</span>
              </h2>
              <ul class="rows">
                {due.map(one => (
                  <li key={one.item}>
                    <Glyph sign="due" />
                    <div>
                      <b>{one.part}</b>
                      <p>{withOwnDays(one.why)}</p>
                    </div>
                    <span class="side">
                      {one.inBox > 0
                        ? sparesWords.inBox(one.inBox)
                        : one.price === null
                          ? sparesWords.priceNotKnown
                          : sparesWords.ofMoney(one.price)}
                    </span>
                  </li>
                ))}
              </ul>
            </section>
          )}
          {consumables.length > 0 && (
            <p class="soft head-gap">
              {sparesWords.thatWorkUsesBesides(consumables.map(({ name }) => name).join(', '))}
            </p>
          )}
          {drawn && <PlateFigure drawn={drawn} />}
        </div>
        <section class="group" aria-labelledby="carry">
          <h2 id="carry">
            {sparesWords.carry} <span>{sparesWords.asFar(kg(box.kilograms))}</span>
          </h2>
          {carried.length === 0 && <p class="note">{sparesWords.nothing}</p>}
          <ul class="piles">
            {carried.map(pile => (
              <PileRow key={pile.name} pile={pile} session={session} />
            ))}
          </ul>
          <details class="group no-print">
            <summary>
              <h2>
                {sparesWords.notCarried} <span>{left.length}</span>
              </h2>
            </summary>
            <ul class="piles">
              {left.map(pile => (
                <PileRow key={pile.name} pile={pile} session={session} />
              ))}
            </ul>
          </details>
          {box.unknown.length > 0 && (
            <details class="group">
              <summary>
                <h2>
                  {sparesWords.notCountedNoChance} <span>{box.unknown.length}</span>
                </h2>
              </summary>
              <ul class="rows">
                {box.unknown.map(({ part, why }) => (
                  <li key={part}>
                    <Glyph sign="not known" />
                    <div>
                      <a href={hashOf({ sheet: 'lives', about: part })}>{capital(part)}</a>
                      <p>{why}</p>
                    </div>
                  </li>
                ))}
              </ul>
            </details>
          )}
          <RunningCosts snapshot={snapshot} session={session} box={box} />
        </section>
      </div>
    </>
  );
}

function Shopping({ box: { buy, money, more } }: { readonly box: SparesBox }) {
  return (
    <section class="group" aria-labelledby="buy">
      <h2 id="buy">
        {sparesWords.buy} <span>{sparesWords.ofMoney(money)}</span>
      </h2>
      {buy.length === 0 ? (
        <p class="note">{sparesWords.nothing}</p>
      ) : (
        <table class="figures shopping">
          <thead>
            <tr>
              <th scope="col">{sparesWords.what}</th>
              <th scope="col">{sparesWords.pieces}</th>
              <th scope="col">{sparesWords.each}</th>
              <th scope="col">{sparesWords.money}</th>
            </tr>
          </thead>
          <tbody>
            {buy.map(one => (
              <tr key={one.name}>
                <th scope="row">{capital(one.name)}</th>
                <td>{one.count}</td>
                <td>{one.price}</td>
                <td>{one.money}</td>
              </tr>
            ))}
          </tbody>
        </table>
      )}
      {more && (
        <p class="note need">
          {sparesWords.withMoreMoneyBuy(
            more.money,
            more.finish.words,
            more.buy.length === 0 ? 'nothing' : more.buy.map(({ name, count }) => `${count} × ${name}`).join(', '),
          )}
        </p>
      )}
    </section>
  );
}

export const kg = (mass: number): string => `${Number(mass.toPrecision(2))} kg`;
