/** A kart built by tapping its parts in and out; what is written is its file. */
import './build.css';
import { useState } from 'preact/hooks';
import { edited, type KartEdit, type PartChoice } from '../../app/index.ts';
import { SYSTEMS } from '../../kart/index.ts';
import { Change } from '../kart-file/change.tsx';
import { Errors } from '../kart-file/errors.tsx';
import { type KartFileProps, useKartFile } from '../kart-file/use-kart-file.ts';
import { hashOf } from '../place.ts';
import { kartFileWords } from '../words/kart-file.ts';
import { capital } from '../words/reads.ts';
import { Dimensions } from './dimensions.tsx';
import { NewPart } from './new-part.tsx';
import { PartRow } from './part-row.tsx';

export function Build(props: KartFileProps) {
  const { kart } = props.snapshot;
  const use = useKartFile(props);
  const [before, setBefore] = useState<readonly string[]>([]);
  const [find, setFind] = useState('');
  const { text, filed, told, last } = use;
  const choices = last?.choices;
  const wrong = told !== undefined && (told.problems.length > 0 || told.renamed !== undefined);
  const { writing } = props.session.view();
  const edit = (one: KartEdit): void => {
    setBefore([...before, text]);
    use.put(edited(text, one));
  };
  const backOne = (): void => {
    use.put(before.at(-1) ?? filed.text);
    setBefore(before.slice(0, -1));
  };
  const wanted = find.trim().toLowerCase();
  const shown = (choices?.parts ?? []).filter(({ part, kind }) => `${part} ${kind}`.toLowerCase().includes(wanted));
  return (
    <>
      <p class="no-print">
        <a class="back" href={hashOf({ sheet: 'kart' })}>
          {kartFileWords.kart}
        </a>
      </p>
      <h1>{kartFileWords.build(kart.name)}</h1>
      <p class="soft">{kartFileWords.buildHow}</p>
      <p class="no-print head-gap">
        <a class="button" href={hashOf({ sheet: 'file' })}>
          {kartFileWords.toFile}
        </a>
      </p>
      {choices === undefined && told === undefined && <p class="loading">{kartFileWords.reading}</p>}
      {choices !== undefined && (
        <div inert={writing}>
          <label for="find-part">{kartFileWords.find}</label>
          <input id="find-part" autocomplete="off" value={find} onInput={e => setFind(e.currentTarget.value)} />
          {SYSTEMS.map(system => (
            <System
              key={`${system} ${wanted === ''}`}
              name={system}
              parts={shown.filter(one => one.system === system)}
              open={wanted !== ''}
              edit={edit}
            />
          ))}
          <NewPart choices={choices} edit={edit} />
          <Dimensions choices={choices} edit={edit} />
        </div>
      )}
      {text !== filed.text && (
        <div class="bar to-change no-print">
          <button type="button" class="button main" onClick={() => document.getElementById('change')?.scrollIntoView()}>
            {wrong ? kartFileWords.errors(Math.max(1, told.problems.length)) : kartFileWords.seeAndFile}
          </button>
          {before.length > 0 && (
            <button type="button" class="button" disabled={writing} onClick={backOne}>
              {kartFileWords.backOne}
            </button>
          )}
        </div>
      )}
      {wrong && (
        <section class="refused">
          {told.renamed !== undefined && <p>{kartFileWords.renamed(kart.name, told.renamed)}</p>}
          <Errors problems={told.problems} />
          <a class="button" href={hashOf({ sheet: 'file' })}>
            {kartFileWords.putRight}
          </a>
        </section>
      )}
      <Change use={use} writing={writing} />
    </>
  );
}

function System(props: {
  readonly name: string;
  readonly parts: readonly PartChoice[];
  readonly open: boolean;
  readonly edit: (edit: KartEdit) => void;
}) {
  const { name, parts, open, edit } = props;
  if (parts.length === 0) return null;
  const on = parts.filter(one => one.on).length;
  return (
    <details class="group" open={open}>
      <summary>
        <h2>
          {capital(name)} <span>{kartFileWords.counts(on, parts.length - on)}</span>
        </h2>
      </summary>
      <ul class="build-parts">
        {parts.map(one => (
          <PartRow key={one.part} part={one} edit={edit} />
        ))}
      </ul>
    </details>
  );
}
