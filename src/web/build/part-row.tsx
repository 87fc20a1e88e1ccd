/** One part: in or out, how it is held, and the second retention of each of its joints. */
import { useState } from 'preact/hooks';
import type { JointChoice, KartEdit, PartChoice } from '../../app/index.ts';
import { kartFileWords } from '../words/kart-file.ts';
import { capital } from '../words/reads.ts';

type Edit = (edit: KartEdit) => void;

export function PartRow({ part: one, edit }: { readonly part: PartChoice; readonly edit: Edit }) {
  const { part, kind, on, below, joints } = one;
  return (
    <li class={on ? '' : 'is-out'}>
      <div class="part-line">
        <div>
          <b>{capital(part)}</b>
          <p class="soft">
            {kind}
            {!on && `, ${kartFileWords.isOut}`}
            {on && !below && `, ${kartFileWords.isOwn}`}
          </p>
        </div>
        {on ? (
          <button
            type="button"
            class="button"
            aria-label={kartFileWords.takeOut(part)}
            onClick={() => edit({ is: 'part out', part, below })}
          >
            {kartFileWords.out}
          </button>
        ) : (
          <button
            type="button"
            class="button main"
            aria-label={kartFileWords.putBack(part)}
            onClick={() => edit({ is: 'part in', part })}
          >
            {kartFileWords.putIn}
          </button>
        )}
      </div>
      {joints.length > 0 && (
        <details>
          <summary>{kartFileWords.howHeld(joints.length)}</summary>
          <ul>
            {joints.map(joint => (
              <Joint key={joint.name} part={part} joint={joint} edit={edit} />
            ))}
          </ul>
        </details>
      )}
    </li>
  );
}

function Joint(props: { readonly part: string; readonly joint: JointChoice; readonly edit: Edit }) {
  const { part, joint: one, edit } = props;
  const { name, kind, retention, second, beneath, could, accept } = one;
  const names = [...new Set([...(beneath === null ? [] : [beneath]), ...could])];
  const [chosen, setChosen] = useState(names[0] ?? '');
  const of = { part, joint: name };
  const id = `second ${part} ${name}`;
  const put = (): void =>
    edit(
      chosen === beneath
        ? { is: 'second back', ...of }
        : { is: 'second in', ...of, second: chosen, accept: kartFileWords.accept(accept, chosen) },
    );
  return (
    <li class="joint-line">
      <p>
        {kartFileWords.held(name, kind, retention)}.{' '}
        {second === null ? kartFileWords.noSecond : kartFileWords.second(second)}.
      </p>
      {second !== null ? (
        <button
          type="button"
          class="button"
          aria-label={kartFileWords.secondOutOf(name)}
          onClick={() => edit({ is: 'second out', ...of })}
        >
          {kartFileWords.secondOut}
        </button>
      ) : (
        names.length > 0 && (
          <div class="second-in">
            <select
              id={id}
              class="field"
              aria-label={kartFileWords.secondFor(name)}
              value={chosen}
              onChange={e => setChosen(e.currentTarget.value)}
            >
              {names.map(second => (
                <option key={second} value={second}>
                  {second}
                </option>
              ))}
            </select>
            <button type="button" class="button" aria-label={kartFileWords.secondInOf(name)} onClick={put}>
              {kartFileWords.secondIn}
            </button>
          </div>
        )
      )}
    </li>
  );
}
