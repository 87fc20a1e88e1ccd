/** The Numbers sheet: every subject that can be asked alone, and one of them with its form and its answer. */
import './numbers.css';
import './plates/plates.css';
import { useEffect, useMemo, useRef, useState } from 'preact/hooks';
import { fromKart } from '../../app/index.ts';
import type { Kart } from '../../kart/index.ts';
import { type Subject, subjects } from '../../numbers/index.ts';
import { PrintTitle } from '../parts.tsx';
import { hashOf, type Keep } from '../place.ts';
import { numbersWords } from '../words/numbers.ts';
import { capital } from '../words/reads.ts';
import { Answered, HowWorkedOut } from './answered.tsx';
import { AskForm } from './ask-form.tsx';
import { formOf, limitsIn } from './fields.ts';
import { questionOf, type Typed, typedFrom, typedOf } from './question.ts';

export type SheetProps = { readonly kart: Kart; readonly keep: Keep; readonly subject: string | undefined };

export function NumbersSheet({ kart, keep, subject }: SheetProps) {
  const found = subjects.find(one => one.name === subject);
  if (found) return <SubjectPage key={`${kart.name} ${found.name}`} subject={found} kart={kart} keep={keep} />;
  return (
    <>
      <h1>{numbersWords.numbers}</h1>
      <p class="soft head-gap">{numbersWords.eachIsWorkedOut}</p>
      {subject !== undefined && <p class="note">{numbersWords.thereIsNoNumberCalled(subject)}</p>}
      <ul class="subjects">
        {subjects.map(one => {
          const [name, about] = titleOf(one);
          return (
            <li key={one.name}>
              <a href={hashOf({ sheet: 'numbers', number: one.name })}>
                <b>{name}</b>
                <span class="soft">{about}</span>
              </a>
            </li>
          );
        })}
      </ul>
    </>
  );
}

/** 'Bolt: torque and preload' → 'Bolt', 'Torque and preload'. */
function titleOf({ title }: Subject): readonly [string, string] {
  const at = title.indexOf(': ');
  return at < 0 ? [title, ''] : [title.slice(0, at), capital(title.slice(at + 2))];
}

function SubjectPage({ subject, kart, keep }: { readonly subject: Subject; readonly kart: Kart; readonly keep: Keep }) {
  const form = useMemo(() => formOf(subject), [subject]);
  const kept = (what: string): string => `numbers ${what} ${kart.name} ${subject.name}`;
  const [typed, setTyped] = useState<Typed>(() => typedFrom(keep.get(kept('typed'))) ?? fromKart(subject, kart));
  const [asked, setAsked] = useState<Typed | undefined>(() => typedFrom(keep.get(kept('asked'))));
  const [times, setTimes] = useState(0);
  // What one press put other figures over: a slip of the hand loses nothing.
  const [before, setBefore] = useState<Typed>();
  const question = useMemo(() => asked && questionOf(form, asked), [form, asked]);
  const outcome = useMemo(() => question && subject.ask(question), [subject, question]);
  const head = useRef<HTMLHeadingElement>(null);

  const type = (next: Typed): void => {
    setTyped(next);
    keep.set(kept('typed'), JSON.stringify(next));
  };
  const ask = (what: Typed): void => {
    setAsked(what);
    setTimes(n => n + 1);
    keep.set(kept('asked'), JSON.stringify(what));
  };
  useEffect(() => {
    if (times > 0 && outcome?.kind === 'answer') head.current?.focus();
  }, [times, outcome]);

  const [name, about] = titleOf(subject);
  const limits = useMemo(() => limitsIn(form), [form]);
  const changed =
    asked !== undefined && JSON.stringify(questionOf(form, asked)) !== JSON.stringify(questionOf(form, typed));
  const example =
    JSON.stringify(questionOf(form, typed)) === JSON.stringify(questionOf(form, typedOf(subject.example)));
  return (
    <>
      <PrintTitle title={numbersWords.numbers} kart={kart.name} event={name} invented={kart.invented} />
      <p class="no-print">
        <a class="back" href={hashOf({ sheet: 'numbers' })}>
          {numbersWords.allNumbers}
        </a>
      </p>
      <h1>{name}</h1>
      <p class="soft">{about}</p>
      <div class="numbers-page">
        <section aria-label={numbersWords.question}>
          <p class="soft head-gap">
            {numbersWords.writeEachWithItsUnit(limits !== undefined ? numbersWords.howWellItIsKnown(limits) : '')}
          </p>
          {example && <p class="note">{numbersWords.theseAreInvented}</p>}
          <AskForm
            form={form}
            typed={typed}
            problems={outcome?.kind === 'problems' && !changed ? outcome.problems : []}
            times={times}
            onTyped={type}
            onAsk={() => ask(typed)}
          >
            <div class="answers">
              <button
                type="button"
                class="button plain"
                onClick={() => {
                  setBefore(typed);
                  type(fromKart(subject, kart));
                }}
              >
                {numbersWords.startAgain}
              </button>
              <button
                type="button"
                class="button plain"
                onClick={() => {
                  setBefore(typed);
                  type(typedOf(subject.example));
                  ask(typedOf(subject.example));
                }}
              >
                {numbersWords.tryExample}
              </button>
              {before && (
                <button
                  type="button"
                  class="button full"
                  onClick={() => {
                    setBefore(undefined);
                    type(before);
                  }}
                >
                  {numbersWords.bringBackWhatWasTyped}
                </button>
              )}
            </div>
          </AskForm>
        </section>
        <section aria-label={numbersWords.answer}>
          <h2 ref={head} tabIndex={-1} class="answer-head">
            {numbersWords.answer}
          </h2>
          {outcome === undefined && <p class="note">{numbersWords.nothingWorkedOutYet}</p>}
          {changed && <p class="note">{numbersWords.somethingWasChanged}</p>}
          {outcome?.kind === 'problems' && !changed && <p class="note">{numbersWords.noAnswerWhatWasRefused}</p>}
          {question && outcome?.kind === 'answer' && (
            <Answered subject={subject} question={question} answer={outcome} />
          )}
          <HowWorkedOut subject={subject} />
        </section>
      </div>
    </>
  );
}
