/** The main dimensions, and the others beneath; what nobody has measured says so. */
import { useEffect, useRef, useState } from 'preact/hooks';
import { type KartChoices, type KartEdit, MAIN_DIMENSIONS } from '../../app/index.ts';
import { kartFileWords } from '../words/kart-file.ts';
import { capital } from '../words/reads.ts';

type Dimension = KartChoices['dimensions'][number];
type Edit = (edit: KartEdit) => void;

export function Dimensions({ choices, edit }: { readonly choices: KartChoices; readonly edit: Edit }) {
  const { dimensions } = choices;
  const main = dimensions.filter(({ name }) => MAIN_DIMENSIONS.includes(name));
  const others = dimensions.filter(({ name }) => !MAIN_DIMENSIONS.includes(name));
  const unmeasured = (of: readonly Dimension[]): number => of.filter(({ measured }) => !measured).length;
  return (
    <>
      {[[kartFileWords.dimensions, main] as const, [kartFileWords.others, others] as const].map(
        ([title, of]) =>
          of.length > 0 && (
            <details class="group" key={title}>
              <summary>
                <h2>
                  {title} {unmeasured(of) > 0 && <span>{kartFileWords.unmeasured(unmeasured(of))}</span>}
                </h2>
              </summary>
              <div class="dimensions">
                {of.map(one => (
                  <Field key={one.name} one={one} edit={edit} />
                ))}
              </div>
            </details>
          ),
      )}
    </>
  );
}

function Field({ one, edit }: { readonly one: Dimension; readonly edit: Edit }) {
  const { name, text, measured } = one;
  const [typed, setTyped] = useState(text);
  const said = useRef(text);
  useEffect(() => {
    said.current = text; // taken, or taken back
    setTyped(text);
  }, [text]);
  const commit = (): void => {
    const value = typed.trim();
    if (value === '' || value === said.current) return;
    said.current = value;
    edit({ is: 'dimension', name, value });
  };
  const id = `dimension ${name}`;
  return (
    <div>
      <label for={id}>{capital(name)}</label>
      <input
        id={id}
        autocomplete="off"
        maxLength={100}
        value={typed}
        onInput={e => setTyped(e.currentTarget.value)}
        aria-describedby={measured ? undefined : `${id} hint`}
        onBlur={commit}
        onKeyDown={e => {
          if (e.key === 'Enter') commit();
        }}
      />
      {!measured && (
        <p class="soft" id={`${id} hint`}>
          {kartFileWords.ofTemplate}
        </p>
      )}
    </div>
  );
}
