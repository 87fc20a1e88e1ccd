/** The form of a question: a field a line, what was refused right beneath it, what was typed left as it is. */
import type { ComponentChildren } from 'preact';
import { useEffect, useRef } from 'preact/hooks';
import type { InputProblem } from '../../numbers/index.ts';
import { Refused } from '../parts.tsx';
import { numbersWords } from '../words/numbers.ts';
import { capital } from '../words/reads.ts';
import { Line, Needed, toProblem } from './ask-line.tsx';
import type { Field, Form, GroupField, ListField } from './fields.ts';
import { problemsElsewhere, rowsOf, type Typed, under, withoutRow } from './question.ts';

type Asking = {
  readonly typed: Typed;
  readonly problems: readonly InputProblem[];
  readonly onTyped: (typed: Typed) => void;
};
type Props = Asking & {
  readonly form: Form;
  /** How often it was asked: a new refusal takes the eye to its field. */
  readonly times: number;
  readonly onAsk: () => void;
  readonly children?: ComponentChildren; // further buttons
};

export function AskForm({ form, times, onAsk, children, ...asking }: Props) {
  const at = useRef<HTMLFormElement>(null);
  const refused = asking.problems.length > 0 ? times : 0;
  useEffect(() => {
    if (refused > 0) at.current?.querySelector<HTMLElement>('[aria-invalid="true"]')?.focus();
  }, [refused]);
  return (
    <form
      ref={at}
      class="ask"
      noValidate
      onSubmit={e => {
        e.preventDefault();
        onAsk();
      }}
    >
      <Fields form={form} path="" asking={asking} />
      <Refused problems={problemsElsewhere(form, asking.typed, asking.problems).map(toProblem)} />
      <button type="submit" class="button main big wide">
        {numbersWords.workItOut}
      </button>
      {children}
    </form>
  );
}

type Part = { readonly path: string; readonly asking: Asking };

function Fields({ form, path, asking }: Part & { readonly form: Form }) {
  const show = (field: Field) => <Entry key={field.key} field={field} path={under(path, field.key)} asking={asking} />;
  // Open where something was typed or refused.
  const used = form.more.some(({ key }) => {
    const at = under(path, key);
    const here = (other: string): boolean => other === at || other.startsWith(`${at}/`);
    return Object.keys(asking.typed).some(here) || asking.problems.some(problem => here(problem.path));
  });
  return (
    <>
      {form.first.map(show)}
      {form.more.length > 0 && (
        <details class="group if-known" open={used}>
          <summary>
            <h2>
              {numbersWords.ifKnown} <span>{numbersWords.more(form.more.length)}</span>
            </h2>
          </summary>
          {form.more.map(show)}
        </details>
      )}
    </>
  );
}

function Entry({ field, path, asking }: Part & { readonly field: Field }) {
  if (field.is === 'list') return <List field={field} path={path} asking={asking} />;
  if (field.is === 'group') return <Group field={field} path={path} asking={asking} />;
  const { typed, problems, onTyped } = asking;
  return (
    <Line
      field={field}
      path={path}
      value={typed[path] ?? ''}
      problems={problemsAt(problems, path)}
      onTyped={text => onTyped({ ...typed, [path]: text })}
    />
  );
}

const problemsAt = (problems: readonly InputProblem[], path: string) => problems.filter(p => p.path === path);

function Group({ field, path, asking }: Part & { readonly field: GroupField }) {
  return (
    <fieldset class="list-entry">
      <legend>
        {capital(path.replaceAll('/', ', '))}
        {field.must && <Needed />}
      </legend>
      {field.meaning !== '' && <p class="soft">{capital(field.meaning)}</p>}
      <Refused problems={problemsAt(asking.problems, path).map(toProblem)} />
      <Fields form={field.form} path={path} asking={asking} />
    </fieldset>
  );
}

/** Rows of the same fields; one is added or taken out by a button, never by a gesture. */
function List({ field, path, asking }: Part & { readonly field: ListField }) {
  const { typed, problems, onTyped } = asking;
  const one = field.key.replace(/s$/, '');
  const rows = rowsOf(typed, path);
  return (
    <fieldset class="list-entry">
      <legend>
        {capital(field.key)}
        {field.must && <Needed />}
      </legend>
      {field.meaning !== '' && <p class="soft">{capital(field.meaning)}</p>}
      {Array.from({ length: rows }, (_, n) => n).map(n => (
        <fieldset key={n} class="list-row">
          <legend>
            {capital(one)} {n + 1}
          </legend>
          <Fields form={field.form} path={under(path, n)} asking={asking} />
          <button type="button" class="button plain" onClick={() => onTyped(withoutRow(typed, path, n))}>
            {numbersWords.takeOut(one, n + 1)}
          </button>
        </fieldset>
      ))}
      <Refused problems={problemsAt(problems, path).map(toProblem)} />
      <button type="button" class="button" onClick={() => onTyped({ ...typed, [path]: String(rows + 1) })}>
        {numbersWords.addA(one)}
      </button>
    </fieldset>
  );
}
