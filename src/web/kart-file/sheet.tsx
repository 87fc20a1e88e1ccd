/** The kart file as text: read while it is typed, errors at their line, filed when there are none. */
import { useRef, useState } from 'preact/hooks';
import type { Problem } from '../../kart/index.ts';
import { hashOf } from '../place.ts';
import { kartFileWords } from '../words/kart-file.ts';
import { Change } from './change.tsx';
import { Errors } from './errors.tsx';
import { lineStart, nextError } from './lines.ts';
import { type KartFileProps, useKartFile } from './use-kart-file.ts';

export function FileSheet(props: KartFileProps) {
  const { kart } = props.snapshot;
  const use = useKartFile(props);
  const area = useRef<HTMLTextAreaElement>(null);
  const numbers = useRef<HTMLPreElement>(null);
  const [at, setAt] = useState('');
  const { text, told } = use;
  const { writing } = props.session.view();
  const problems = told?.problems ?? [];
  const wrong = new Set(problems.filter(one => one.file === undefined).map(one => one.line));
  const count = text.split('\n').length;

  const goTo = (one: Pick<Problem, 'line' | 'column' | 'message'>): void => {
    const field = area.current;
    if (field === null) return;
    const from = lineStart(text, one.line) + one.column - 1;
    field.focus();
    field.setSelectionRange(from, from);
    field.scrollTop = Math.max(0, (one.line - 4) * (field.scrollHeight / count));
    setAt(one.message);
  };
  const step = (back: boolean): void => {
    const next = nextError(problems, text, area.current?.selectionStart ?? 0, back);
    if (next) goTo(next);
  };
  return (
    <>
      <p class="no-print">
        <a class="back" href={hashOf({ sheet: 'kart' })}>
          {kartFileWords.kart}
        </a>
      </p>
      <h1>{kartFileWords.file(kart.name)}</h1>
      <p class="no-print head-gap">
        <a class="button" href={hashOf({ sheet: 'build' })}>
          {kartFileWords.toBuild}
        </a>
      </p>
      <label for="kart-file">{kartFileWords.text}</label>
      <p class="soft" id="kart-file-keys">
        {kartFileWords.keys}
      </p>
      <div class="file-text">
        <pre ref={numbers} aria-hidden="true">
          {Array.from({ length: count }, (_, i) => `${wrong.has(i + 1) ? '▸ ' : ''}${i + 1}`).join('\n')}
        </pre>
        <textarea
          id="kart-file"
          ref={area}
          wrap="off"
          spellcheck={false}
          autocomplete="off"
          autocapitalize="off"
          aria-describedby="kart-file-keys kart-file-state"
          aria-invalid={problems.length > 0}
          readOnly={writing} // what was pressed is what is filed
          value={text}
          onInput={e => use.put(e.currentTarget.value)}
          onScroll={e => {
            if (numbers.current) numbers.current.style.transform = `translateY(${-e.currentTarget.scrollTop}px)`;
          }}
          onKeyDown={e => {
            if (e.key !== 'F8') return;
            e.preventDefault();
            step(e.shiftKey);
          }}
        />
      </div>
      <p role="status" id="kart-file-state" class="note">
        {kartFileWords.linesAnd(
          count,
          told === undefined ? kartFileWords.reading : kartFileWords.errors(problems.length),
        )}
        {at !== '' && problems.some(one => one.message === at) && <>. {at}</>}
      </p>
      {problems.length > 0 && (
        <button type="button" class="button" onClick={() => step(false)}>
          {kartFileWords.nextError}
        </button>
      )}
      {told?.renamed !== undefined && (
        <div class="refused" role="alert">
          <p>{kartFileWords.renamed(kart.name, told.renamed)}</p>
        </div>
      )}
      <Errors problems={problems} goTo={goTo} />
      {told !== undefined && told.notes.length > 0 && (
        <details class="group">
          <summary>
            <h2>
              {kartFileWords.notes} <span>{told.notes.length}</span>
            </h2>
          </summary>
          <Errors problems={told.notes} goTo={goTo} />
        </details>
      )}
      <Change use={use} writing={writing} />
    </>
  );
}
