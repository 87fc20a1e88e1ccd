/** Who works on the kart and which times there are: large, few, and kept on the device. */
import { useState } from 'preact/hooks';
import { planWords } from '../words/plan.tsx';
import { spanOf } from '../words/reads.ts';
import { type Crew, minutesOf, type Time, timesLeft } from './crew.ts';

const PEOPLE = [1, 2, 3] as const;
const USUAL: Time = { minutes: 180 };
const STEP = 30; // minutes that one press adds or takes

type Props = { readonly crew: Crew; readonly who: string; readonly onSaid: (crew: Crew) => void };

export function WhoAndWhen({ crew, who, onSaid }: Props) {
  const over = crew.times.length > 0 && timesLeft(crew, new Date().toISOString()).length === 0;
  const timeAt = (n: number, time: Time | undefined): void =>
    onSaid({ ...crew, times: crew.times.flatMap((one, i) => (i !== n ? [one] : time === undefined ? [] : [time])) });
  return (
    <details class="group who-and-when">
      <summary>
        <h2>
          {planWords.whoAndWhen} <span>{inShort(crew)}</span>
        </h2>
      </summary>
      <fieldset>
        <legend>{planWords.peopleWhoWorkOnKart}</legend>
        <div class="people">
          {PEOPLE.map(people => (
            <button
              key={people}
              type="button"
              class={`button big ${people === crew.people ? 'main' : ''}`}
              aria-pressed={people === crew.people}
              onClick={() => onSaid({ ...crew, people, names: namesFor(crew, who) })}
            >
              {people}
            </button>
          ))}
        </div>
      </fieldset>
      {crew.people > 1 &&
        PEOPLE.slice(0, crew.people).map((person, n) => (
          <NameField
            key={person}
            person={person}
            name={crew.names[n] ?? ''}
            onSaid={name => onSaid({ ...crew, names: PEOPLE.map((_, i) => (i === n ? name : (crew.names[i] ?? ''))) })}
          />
        ))}
      <h3 class="head-gap">{planWords.timesThere}</h3>
      {crew.times.length === 0 && <p class="soft">{planWords.noEndSaidEverythingDue}</p>}
      {over && (
        <p class="refused" role="alert">
          {planWords.theseTimesAreOverSay()}
        </p>
      )}
      {crew.times.map((time, n) => (
        <TimeFields key={`${n} of ${crew.times.length}`} n={n + 1} time={time} onSaid={said => timeAt(n, said)} />
      ))}
      <div class="answers">
        <button type="button" class="button full" onClick={() => onSaid({ ...crew, times: [...crew.times, USUAL] })}>
          {planWords.sayHowMuchTimeThere(crew.times.length)}
        </button>
      </div>
    </details>
  );
}

const inShort = ({ people, times }: Crew): string => {
  const hands = planWords.onePerson(people);
  return times.length === 0 ? hands : `${hands}, ${times.map(({ minutes }) => spanOf(minutes)).join(' + ')}`;
};

/** Whoever holds the device is the first, until somebody says otherwise. */
const namesFor = ({ names }: Crew, who: string): readonly string[] => (names.length > 0 ? names : [who]);

/** What is being typed stays while a plan arrives from beside the page. */
function NameField(props: { readonly person: number; readonly name: string; readonly onSaid: (name: string) => void }) {
  const { person, name, onSaid } = props;
  const [typed, setTyped] = useState<string>();
  return (
    <div>
      <label for={`crew-name-${person}`}>{planWords.nameOfPerson(person)}</label>
      <input
        id={`crew-name-${person}`}
        value={typed ?? name}
        autocomplete="off"
        maxLength={60}
        onInput={e => setTyped(e.currentTarget.value)}
        onChange={e => {
          setTyped(undefined);
          onSaid(e.currentTarget.value);
        }}
      />
    </div>
  );
}

function TimeFields(props: {
  readonly n: number;
  readonly time: Time;
  readonly onSaid: (time: Time | undefined) => void;
}) {
  const { n, time, onSaid } = props;
  const [typed, setTyped] = useState<string>();
  const wrong = typed !== undefined && minutesOf(typed) === undefined;
  const put = (minutes: number): void => {
    setTyped(undefined);
    onSaid({ ...time, minutes: Math.max(STEP, minutes) });
  };
  return (
    <fieldset class="time">
      <legend>{planWords.time(n)}</legend>
      <div class="how-long">
        <button
          type="button"
          class="button"
          aria-label={planWords.timeHalfHourLess(n)}
          onClick={() => put(time.minutes - STEP)}
        >
          −
        </button>
        <input
          aria-label={planWords.howLongTime(n)}
          value={typed ?? spanOf(time.minutes)}
          autocomplete="off"
          aria-invalid={wrong}
          onInput={e => setTyped(e.currentTarget.value)}
          onChange={e => {
            const minutes = minutesOf(e.currentTarget.value);
            if (minutes === undefined) return;
            setTyped(undefined);
            onSaid({ ...time, minutes });
          }}
        />
        <button
          type="button"
          class="button"
          aria-label={planWords.timeHalfHourMore(n)}
          onClick={() => put(time.minutes + STEP)}
        >
          +
        </button>
      </div>
      {wrong && (
        <p class="refused" role="alert">
          {planWords.sayHowLong()}
        </p>
      )}
      <label for={`time-from-${n}`}>
        {planWords.begins} <span class="soft">{planWords.ifItIsKnown}</span>
      </label>
      <div class="begins">
        <input
          id={`time-from-${n}`}
          type="datetime-local"
          value={time.from === undefined ? '' : localOf(time.from)}
          onChange={e => onSaid(withFrom(time, e.currentTarget.value))}
        />
        <button
          type="button"
          class="button plain"
          aria-label={planWords.leaveOutTime(n)}
          onClick={() => onSaid(undefined)}
        >
          {planWords.leaveOut}
        </button>
      </div>
    </fieldset>
  );
}

const withFrom = ({ minutes }: Time, local: string): Time =>
  local === '' ? { minutes } : { minutes, from: new Date(local).toISOString() };

/** The instant as this device's clock shows it, in the shape of the field. */
function localOf(instant: string): string {
  const at = new Date(instant);
  return new Date(at.getTime() - at.getTimezoneOffset() * 60_000).toISOString().slice(0, 16);
}
