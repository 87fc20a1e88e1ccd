/** A kart of one's own in four questions, one at a time, and then its plan. */
import './first-run.css';
import { useEffect, useMemo, useRef, useState } from 'preact/hooks';
import { beginKart, type Problem, wornByHours } from '../../app/index.ts';
import { type Kart, type LibraryTexts, newKartFile } from '../../kart/index.ts';
import { Refused } from '../parts.tsx';
import type { Keep } from '../place.ts';
import type { Session } from '../session.ts';
import { firstRunWords } from '../words/first-run.ts';
import {
  firstAnswers,
  freeName,
  keepAnswers,
  keptAnswers,
  QUESTIONS,
  questionOf,
  readAnswers,
  type Typed,
} from './answers.ts';
import { Begun, begunIn, keepBegun } from './begun.tsx';
import { AskEvent, AskHours, AskName, AskTemplate } from './questions.tsx';

export type FirstRunProps = {
  readonly session: Session;
  readonly keep: Keep;
  readonly who: string;
  /** Stays on this sheet, though there is a kart now. */
  readonly here: () => void;
  readonly openKart: (name: string) => Promise<void>;
};

type Refusals = { readonly problems: readonly Problem[]; readonly again: boolean; readonly unknownHours: boolean };
const NOTHING: Refusals = { problems: [], again: false, unknownHours: false };

export function FirstRun({ session, keep, who, here, openKart }: FirstRunProps) {
  const { karts, snapshot, sync, writing } = session.view();
  const taken = karts.map(kart => kart.name);
  const [said, setTyped] = useState<Typed>(() => keptAnswers(keep, firstAnswers(new Date(), taken)));
  const [offered] = useState(() => freeName(taken));
  // The karts of another device may arrive meanwhile: a name that nobody typed makes way for theirs.
  const typed = said.name === offered && taken.includes(offered) ? { ...said, name: freeName(taken) } : said;
  const [begun, setBegun] = useState(() => begunIn(keep));
  const [refused, setRefused] = useState<Refusals>(NOTHING);
  const { library, kart, problems: unread } = useTemplate(session, typed.template);
  const at = QUESTIONS.indexOf(typed.question);
  const heading = useHeadingFocus(at);

  // Kept over a reload, not for the next time somebody comes here.
  useEffect(() => () => void keepBegun(keep), [keep]);

  const anew = (): void => {
    setTyped(firstAnswers(new Date(), taken));
    setBegun(keepBegun(keep));
  };
  if (begun !== undefined && snapshot?.kart.name === begun.kart)
    return <Begun begun={begun} snapshot={snapshot} session={session} another={anew} />;

  const put = (part: Partial<Typed>): void => {
    const next = { ...typed, ...part };
    keepAnswers(keep, next);
    setTyped(next);
    setRefused(NOTHING);
  };
  const goTo = (n: number): void => put({ question: QUESTIONS[n] ?? 'template' });
  const next = (part: Partial<Typed> = {}, sure = false): void => {
    const now = { ...typed, ...part };
    const read = readAnswers(now, { taken, now: new Date(), sure, unknownHours: true });
    const problems = read.problems.filter(one => questionOf(one) === typed.question);
    if (problems.length > 0) setRefused({ ...NOTHING, problems, again: farOnly(problems) });
    else put({ ...part, question: QUESTIONS[at + 1] ?? typed.question });
  };
  const begin = async (unknownHours: boolean, sure: boolean): Promise<void> => {
    const read = readAnswers(typed, { taken, now: new Date(), sure, unknownHours });
    const refuse = (problems: readonly Problem[]): void => {
      const first = Math.min(...problems.map(one => QUESTIONS.indexOf(questionOf(one))));
      put({ question: QUESTIONS[first] ?? typed.question });
      setRefused({ problems, again: farOnly(problems), unknownHours });
    };
    if (read.problems.length > 0 || library === undefined) return refuse([...read.problems, ...unread]);
    here();
    try {
      const written = await session.busy(app => beginKart(app, library, read.said, { by: who, now: new Date(), sure }));
      if (written.kind === 'refused') return refuse(written.problems);
      keepAnswers(keep, undefined);
      const [one] = written.facts;
      const fitted = written.facts.filter(fact => fact.kind === 'fitted' || fact.kind === 'note').map(fact => fact.id);
      setBegun(keepBegun(keep, { kart: one?.kart ?? '', hours: fitted, unknownRunning: typed.minutes.trim() === '' }));
      await openKart(one?.kart ?? '');
    } catch (error) {
      refuse(session.ask.problems(error));
    }
  };
  const last = at === QUESTIONS.length - 1;
  const mine = refused.problems.filter(one => questionOf(one) === typed.question || !FIELDS.has(one.where));
  return (
    <section class="step first-run" aria-label={firstRunWords.sheet}>
      <header>
        <b>{firstRunWords.ofQuestions(at + 1, QUESTIONS.length)}</b>
        <span>{firstRunWords.sheet}</span>
      </header>
      <form
        class="step-body"
        noValidate
        onSubmit={e => {
          e.preventDefault();
          if (last) void begin(false, false);
          else next();
        }}
      >
        {sync.is === 'no server' && karts.length === 0 && <p class="note need">{firstRunWords.noServer}</p>}
        <h1 tabIndex={-1} ref={heading}>
          {firstRunWords.titles[typed.question]}
        </h1>
        {typed.question === 'template' && (
          <AskTemplate library={library} chosen={typed.template} choose={template => next({ template, parts: [] })} />
        )}
        {typed.question === 'name' && <AskName typed={typed} put={put} />}
        {typed.question === 'event' && <AskEvent typed={typed} put={put} />}
        {last && <AskHours typed={typed} put={put} worn={kart && wornByHours(kart)} />}
        <Refused problems={[...mine, ...(typed.question === 'template' || last ? unread : [])]} />
        <div class="answers">
          {refused.again ? (
            <button
              type="button"
              class="button main big full"
              disabled={writing}
              onClick={() => (last ? void begin(refused.unknownHours, true) : next({}, true))}
            >
              {firstRunWords.itIsSo}
            </button>
          ) : (
            typed.question !== 'template' && (
              <button type="submit" class="button main big full" disabled={writing}>
                {!last ? firstRunWords.next : writing ? firstRunWords.making : firstRunWords.makePlan}
              </button>
            )
          )}
          {typed.question === 'event' && (
            <button type="button" class="button big full" onClick={() => next({ noEvent: true })}>
              {firstRunWords.noEvent}
            </button>
          )}
          {last && (
            <button type="button" class="button big full" disabled={writing} onClick={() => void begin(true, false)}>
              {firstRunWords.unknownHours}
            </button>
          )}
          {at > 0 && (
            <button type="button" class="button plain full" onClick={() => goTo(at - 1)}>
              {firstRunWords.back}
            </button>
          )}
        </div>
      </form>
    </section>
  );
}

const FIELDS: ReadonlySet<string> = new Set(['template', 'name', 'event', 'from', 'minutes', 'hours']);
const farOnly = (problems: readonly Problem[]): boolean => problems.every(({ code }) => code === 'far outside');

/** The library, and the kart of the template that was chosen, read while the next questions are answered. */
function useTemplate(session: Session, template: string) {
  const [library, setLibrary] = useState<LibraryTexts>();
  const [kart, setKart] = useState<Kart>();
  const [problems, setProblems] = useState<readonly Problem[]>([]);
  const fail = useMemo(() => (error: unknown) => setProblems(session.ask.problems(error)), [session]);
  useEffect(() => {
    session.ask.library().then(setLibrary, fail);
  }, [session]);
  useEffect(() => {
    if (library === undefined || template === '') return;
    const file = newKartFile(template, 'new', { kinds: {}, rules: {}, templates: library.templates });
    if (file.ok) session.ask.read(file.text).then(read => read.ok && setKart(read.kart), fail);
  }, [session, library, template]);
  return { library, kart, problems };
}

/** Each new question is read out from its heading. */
function useHeadingFocus(question: number) {
  const heading = useRef<HTMLHeadingElement>(null);
  const seen = useRef(question);
  useEffect(() => {
    if (seen.current !== question) heading.current?.focus();
    seen.current = question;
  }, [question]);
  return heading;
}
