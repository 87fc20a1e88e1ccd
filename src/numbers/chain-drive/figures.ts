/** The chain as figures. */
import { formatQuantity } from '../../quantity/index.ts';
import type { Figure } from '../subject.ts';
import { SLACK, stretchLimit } from './condition.ts';
import { pitchCircle } from './length.ts';
import type { Worked } from './work.ts';

const other = (si: number, unit: string, digits: number): Figure => ({
  si,
  unit,
  text: formatQuantity(si, unit, digits),
});
export const mm = (si: number, digits = 1): Figure => other(si, 'mm', digits);
export const percent = (si: number): Figure => other(si, '%', 2);
export const newtons = (si: number): Figure => ({
  si,
  unit: 'N',
  text: formatQuantity(Math.round(si / 10) * 10, 'N', 0),
});

export function figures({
  input,
  size,
  round,
  run,
  wear,
  pull,
  ripple,
  slack,
}: Worked): Readonly<Record<string, Figure>> {
  const found: Record<string, Figure> = {
    pitch: mm(size.pitch, 3),
    roller: mm(size.roller, 2),
    'between inner plates': mm(size.inside, 2),
    'pitch diameter front': mm(pitchCircle(size.pitch, round.front), 2),
    'pitch diameter rear': mm(pitchCircle(size.pitch, round.rear), 2),
  };
  if (run) {
    found['links around'] = { si: run.exact, unit: '', text: `${run.exact.toFixed(2)} links` };
    run.choices.forEach(({ links, centre, move }) => {
      found[`${links} links, taut at`] = mm(centre);
      found[`${links} links, move of the engine`] = mm(move);
    });
    const [best] = run.choices;
    if (best) found.links = { si: best.links, unit: '', text: `${best.links} links` };
    if (run.cut !== undefined) found['links to cut'] = { si: run.cut, unit: '', text: String(run.cut) };
    found['wrap of the front sprocket'] = other(run.wrap, '°', 0);
  }
  if (wear) {
    found.stretch = percent(wear.stretch);
    found['replace at'] = percent(wear.limit);
    const fresh = size.pitch * (input['pitches measured']?.si ?? Number.NaN);
    found['length when new'] = mm(fresh, 2);
    found['length to replace at'] = mm(fresh * (1 + wear.limit), 2);
    found['most stretch for the rear sprocket'] = percent(stretchLimit(round.rear));
  }
  found['slack least'] = mm(SLACK.least, 0);
  found['slack most'] = mm(SLACK.most, 0);
  if (slack?.move !== undefined) found['move of the engine for slack'] = mm(slack.move, 2);
  if (pull) {
    found['chain speed'] = other(pull.speed, 'm/s', 1);
    found.pull = newtons(pull.drive);
    if (pull.own !== undefined) found['pull of its own speed'] = newtons(pull.own);
  }
  found['swing of chain speed'] = other(ripple, '%', 1);
  return found;
}
