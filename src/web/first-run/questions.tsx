/** What is asked, a question each; what stands in the fields already will do. */
import type { LibraryTexts } from '../../kart/index.ts';
import { firstRunWords } from '../words/first-run.ts';
import { spanOf } from '../words/reads.ts';
import { LONG_DAY_MIN, type Typed } from './answers.ts';
import { templatesIn } from './templates.ts';

type Asked = { readonly typed: Typed; readonly put: (part: Partial<Typed>) => void };

export function AskTemplate(props: {
  readonly library: LibraryTexts | undefined;
  readonly chosen: string;
  readonly choose: (template: string) => void;
}) {
  const { library, chosen, choose } = props;
  if (library === undefined) return <p class="loading">{firstRunWords.fetchingTemplates}</p>;
  return (
    <>
      <p class="soft">{firstRunWords.mostLikeIt}</p>
      <ul class="templates">
        {templatesIn(library).map(({ name, about }) => (
          <li key={name}>
            <button type="button" class="button big wide" aria-pressed={name === chosen} onClick={() => choose(name)}>
              <span>
                <b>{name}</b>
                <small>{about}</small>
              </span>
            </button>
          </li>
        ))}
      </ul>
    </>
  );
}

export function AskName({ typed, put }: Asked) {
  return (
    <>
      <label for="first-name">{firstRunWords.nameOfKart}</label>
      <input
        id="first-name"
        autocomplete="off"
        maxLength={200}
        value={typed.name}
        onInput={e => put({ name: e.currentTarget.value })}
      />
    </>
  );
}

export function AskEvent({ typed, put }: Asked) {
  const again = { noEvent: false };
  return (
    <>
      <p class="soft">{firstRunWords.whatWouldLapse}</p>
      <label for="first-event">{firstRunWords.event}</label>
      <input
        id="first-event"
        autocomplete="off"
        maxLength={200}
        value={typed.event}
        onInput={e => put({ ...again, event: e.currentTarget.value })}
      />
      <label for="first-day">{firstRunWords.day}</label>
      <input
        id="first-day"
        type="date"
        value={typed.day}
        onInput={e => put({ ...again, day: e.currentTarget.value })}
      />
      <label for="first-minutes">{firstRunWords.running}</label>
      <div class="with-unit">
        <input
          id="first-minutes"
          inputMode="decimal"
          autocomplete="off"
          aria-describedby="first-minutes-hint"
          value={typed.minutes}
          onInput={e => put({ ...again, minutes: e.currentTarget.value })}
        />
        <span>{firstRunWords.min}</span>
      </div>
      <p class="soft" id="first-minutes-hint">
        {firstRunWords.unknownRunning(spanOf(LONG_DAY_MIN))}
      </p>
    </>
  );
}

type Worn = readonly { readonly part: string; readonly title: string }[];

export function AskHours({ typed, put, worn }: Asked & { readonly worn: Worn | undefined }) {
  const { hours, parts } = typed;
  const tick = (part: string, on: boolean): void =>
    put({ parts: on ? [...parts, part] : parts.filter(other => other !== part) });
  return (
    <>
      <p class="soft">{firstRunWords.whatHoursAre}</p>
      <label for="first-hours">{firstRunWords.hours}</label>
      <div class="with-unit">
        <input
          id="first-hours"
          class="reading"
          inputMode="decimal"
          autocomplete="off"
          value={hours}
          onInput={e => put({ hours: e.currentTarget.value })}
        />
        <span>{firstRunWords.h}</span>
      </div>
      {hours.trim() !== '' && worn !== undefined && (
        <fieldset>
          <legend>{firstRunWords.whatWasNew}</legend>
          {worn.map(({ part, title }) => (
            <label class="tick-box" key={part}>
              <input
                type="checkbox"
                checked={parts.includes(part)}
                onChange={e => tick(part, e.currentTarget.checked)}
              />
              <span>
                {part} <span class="soft">({title})</span>
              </span>
            </label>
          ))}
          <p class="soft">{firstRunWords.notTicked}</p>
        </fieldset>
      )}
    </>
  );
}
