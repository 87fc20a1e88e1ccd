/**
 * A work list that came back on paper, typed as it stands there: a line for each step, its number first, then what was read, or
 * what went wrong. Each line is judged by itself while it is typed.
 */
import { judgeTyped, readReading } from '../../app/index.ts';
import type { Kart } from '../../kart/index.ts';
import type { Step } from '../../prep/index.ts';
import { draftsOf, isHandling, withUnit } from '../answer.ts';
import { titleOf } from '../words/reads.ts';
import { typeInWords } from '../words/type-in.tsx';
import type { Draft } from '../written.ts';

/** A number of the paper and the step it stood for. */
export type Numbered = { readonly n: number; readonly key: string };

export type Line = {
  readonly line: number; // from 1
  /** The step, or what was typed. */
  readonly title: string;
  readonly says: string; // what is written: 'holds, 142.5 mm'
  readonly notes: readonly string[];
} & (
  | { readonly ok: true; readonly step: Step; readonly drafts: readonly Draft[] }
  | { readonly ok: false; readonly step?: Step }
);

const SHAPE = /^(\d{1,4})[.):]?(?:\s+(.*))?$/s;
const WORD = /^(.*?)(?:^|\s+)(fails?|failed|not|later)\b[:,]?\s*(.*)$/is;

export function linesOf(
  text: string,
  { list, steps, kart }: { readonly list: readonly Numbered[]; readonly steps: readonly Step[]; readonly kart: Kart },
): readonly Line[] {
  const keys = new Map(list.map(({ n, key }) => [n, key]));
  const seen = new Set<string>();
  return text.split('\n').flatMap((typed, i): readonly Line[] => {
    const [, number, rest = ''] = SHAPE.exec(typed.trim()) ?? [];
    const wrong = (title: string, says: string, step?: Step): readonly Line[] => [
      { line: i + 1, title, says, notes: [], ok: false, ...(step ? { step } : {}) },
    ];
    if (typed.trim() === '') return [];
    if (number === undefined) return wrong(typed.trim(), typeInWords.beginWithNumberOfStep);
    const key = keys.get(Number(number));
    if (key === undefined) return wrong(number, typeInWords.noStepOfThisList);
    const step = steps.find(s => s.key === key && s.state !== 'done') ?? steps.find(s => s.key === key);
    if (step === undefined) return wrong(number, typeInWords.noLongerInPlanNothing);
    if (step.state === 'done') return wrong(titleOf(step), typeInWords.isDoneAlready, step);
    if (seen.has(key)) return wrong(titleOf(step), typeInWords.standsInAnotherLineToo, step);
    seen.add(key);
    return [lineOf(i + 1, step, rest.trim(), kart)];
  });
}

/** '142.5', '142.5 fails bent', 'not no light', 'later no time'. */
function lineOf(line: number, step: Step, typed: string, kart: Kart): Line {
  const title = titleOf(step);
  const wrong = (says: string): Line => ({ line, title, says, notes: [], ok: false, step });
  const [, before = typed, word, words = ''] = WORD.exec(typed) ?? [];
  const what = word?.toLowerCase();
  const reading = withUnit(before, step.unit);
  const value = reading === '' ? {} : { reading };
  const done = (says: string, drafts: readonly Draft[], notes: readonly string[] = []): Line => ({
    line,
    title,
    says,
    notes,
    ok: true,
    step,
    drafts,
  });
  if (what === 'later' || what === 'not') {
    const why = words.trim();
    if (why === '') return wrong(typeInWords.sayWhyNoLight(step.n, what));
    if (what === 'not' && isHandling(step)) return wrong(typeInWords.handWorkIsDone);
    return what === 'not'
      ? done(typeInWords.cannotBeDone(why), draftsOf(step, { is: 'not possible', why }))
      : done(typeInWords.putOff(why), draftsOf(step, { is: 'put off', why }));
  }
  const item = step.item === null ? undefined : kart.items[step.item];
  if (what === undefined && step.mends !== null)
    return typed === ''
      ? wrong(typeInWords.sayHowItWasMended)
      : done(`mended: ${typed}`, draftsOf(step, { is: 'done', how: typed }));
  if (reading !== '' && (item === undefined || step.unit === null)) return wrong(typeInWords.nothingIsRead);
  const read = reading === '' || item === undefined ? undefined : readReading(reading, item, kart, 'reading');
  if (read && 'problem' in read) return wrong(`${read.problem.message} ${read.problem.remedy}`);
  if (what !== undefined) {
    const defect = words.trim();
    if (isHandling(step)) return wrong(typeInWords.handWorkDoesNotFail);
    if (defect === '') return wrong(typeInWords.sayWhatIsWrongFails(step.n));
    return done(
      typeInWords.fails(reading === '' ? '' : `, ${reading}`, defect),
      draftsOf(step, { is: 'fail', defect, ...value }),
    );
  }
  if (reading === '' && step.action === 'measure') return wrong(typeInWords.needsItsValue(step.unit));
  const judged = item && reading !== '' ? judgeTyped(kart, item, reading) : undefined;
  return done(
    typeInWords.done(reading === '' ? '' : `, ${reading}`),
    draftsOf(step, { is: 'done', ...value }),
    judged?.say,
  );
}
