/** A part of a kind: name, kind, behind what. */
import { useState } from 'preact/hooks';
import { type KartChoices, type KartEdit, mayBeNamed } from '../../app/index.ts';
import { SYSTEMS } from '../../kart/index.ts';
import { kartFileWords } from '../words/kart-file.ts';
import { capital } from '../words/reads.ts';

export function NewPart({ choices, edit }: { readonly choices: KartChoices; readonly edit: (edit: KartEdit) => void }) {
  const [name, setName] = useState('');
  const [kind, setKind] = useState('');
  const [behind, setBehind] = useState<readonly string[]>([]);
  const [wrong, setWrong] = useState('');
  const parts = choices.parts.filter(one => one.on).map(one => one.part);
  const add = (): void => {
    const found = choices.kinds.find(one => one.kind === kind);
    const isNamed = mayBeNamed(name, choices.parts);
    setWrong(isNamed ? (found ? '' : kartFileWords.needsKind) : kartFileWords.needsName);
    if (!isNamed || found === undefined) return;
    edit({ is: 'new part', part: name.trim(), kind, system: found.system, behind });
    setName('');
    setKind('');
    setBehind([]);
  };
  return (
    <details class="group">
      <summary>
        <h2>{kartFileWords.addPart}</h2>
      </summary>
      <form
        noValidate
        onSubmit={e => {
          e.preventDefault();
          add();
        }}
      >
        <label for="part-name">{kartFileWords.partName}</label>
        <input
          id="part-name"
          autocomplete="off"
          maxLength={200}
          aria-invalid={wrong !== ''}
          value={name}
          onInput={e => setName(e.currentTarget.value)}
        />
        <label for="part-kind">{kartFileWords.partKind}</label>
        <select id="part-kind" class="field" value={kind} onChange={e => setKind(e.currentTarget.value)}>
          <option value="">{kartFileWords.choose}</option>
          {SYSTEMS.map(system => (
            <optgroup key={system} label={capital(system)}>
              {choices.kinds
                .filter(one => one.system === system)
                .map(one => (
                  <option key={one.kind} value={one.kind}>
                    {one.kind}
                  </option>
                ))}
            </optgroup>
          ))}
        </select>
        <label for="part-behind">{kartFileWords.behind}</label>
        <select
          id="part-behind"
          class="field"
          value=""
          onChange={e => {
            const part = e.currentTarget.value;
            if (part !== '' && !behind.includes(part)) setBehind([...behind, part]);
          }}
        >
          <option value="">{behind.length === 0 ? kartFileWords.behindNothing : behind.join(', ')}</option>
          {parts
            .filter(part => !behind.includes(part))
            .map(part => (
              <option key={part} value={part}>
                {part}
              </option>
            ))}
        </select>
        {behind.map(part => (
          <button
            key={part}
            type="button"
            class="button plain"
            onClick={() => setBehind(behind.filter(other => other !== part))}
          >
            {kartFileWords.notBehind(part)}
          </button>
        ))}
        {wrong !== '' && (
          <div class="refused" role="alert">
            <p>{wrong}</p>
          </div>
        )}
        <div class="answers">
          <button type="submit" class="button main full">
            {kartFileWords.add}
          </button>
        </div>
      </form>
    </details>
  );
}
