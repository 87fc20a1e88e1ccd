/** What every number of the day has in common: a question of the record is asked, or what it lacks is said. */
import type { Answer, Subject } from '../../numbers/index.ts';
import type { Lead, Missing, TrackPart, TrackSubject } from './model.ts';

export type Drafted = {
  readonly question: Readonly<Record<string, unknown>>;
  readonly from: readonly string[];
  readonly missing: readonly Missing[];
  readonly lead: (answer: Answer) => readonly Lead[];
  readonly warning?: (answer: Answer) => string | null;
};

/** Asked of the subject; an answer that leans on a question refused is none. */
export function asked(subject: Subject, { question, from, missing, lead, warning }: Drafted): TrackPart {
  const answer = subject.ask(question);
  const good = answer.kind === 'answer' ? answer : undefined;
  return {
    subject: subject.name as TrackSubject,
    title: subject.title,
    question,
    answer,
    from,
    missing,
    lead: good ? lead(good) : [],
    warning: good && warning ? warning(good) : null,
  };
}

/** Too little is known to ask. */
export const notAsked = (
  { name, title }: Subject,
  missing: readonly Missing[],
  from: readonly string[] = [],
): TrackPart => ({
  subject: name as TrackSubject,
  title,
  question: null,
  answer: null,
  lead: [],
  from,
  missing,
  warning: null,
});

/** The figures that are there, under the names said in the pit. */
export const leads = (answer: Answer, names: Readonly<Record<string, string>>): readonly Lead[] =>
  Object.entries(names).flatMap(([figure, label]) => {
    const text = answer.figures[figure]?.text;
    return text === undefined ? [] : [{ label, text }];
  });

export const known = <T extends Record<string, unknown>>(values: T): { [K in keyof T]?: NonNullable<T[K]> } =>
  Object.fromEntries(Object.entries(values).filter(([, value]) => value !== undefined)) as {
    [K in keyof T]?: NonNullable<T[K]>;
  };
