/** Traces of no rolling kart, each with what would be right: too short, rising, braked, units mixed. */
import { formatQuantity } from '../../quantity/index.ts';
import { wrong } from '../asked.ts';
import { mustBe } from '../must-be.ts';
import type { InputProblem } from '../subject.ts';
import type { Input, Trace } from './input.ts';

/** Fewest points; largest rise of one step [m/s], twice what a logger jumps (common practice). */
export const FEWEST = 8;
const JUMP = 0.4;
/** Slowing of a kart that only rolls [m/s²], and how far it must slow: common practice. */
const SLOWING: readonly [number, number] = [0.05, 3];
const LEAST_FALL = 1.4; // first over last speed

type Found = readonly (InputProblem | undefined)[];

export const impossible = (input: Input): readonly InputProblem[] =>
  [
    ...traceProblems('first run points', input['first run points']),
    ...(input['return run points'] ? traceProblems('return run points', input['return run points']) : []),
    ...kart(input),
    ...between(input),
    ...powered(input),
  ].filter(each => each !== undefined);

function traceProblems(path: string, trace: Trace): Found {
  if (trace.length < FEWEST)
    return [
      wrong(
        path,
        `${FEWEST} points or more`,
        `${trace.length}`,
        'log it at one point a second or faster, over half of the speed',
      ),
    ];
  const rows = trace.flatMap(({ time, speed }, n) => {
    const before = trace[n - 1];
    return [
      before && time.si <= before.time.si
        ? wrong(
            `${path}/${n}/time`,
            `later than ${before.time.text}`,
            time.text,
            'put the rows in order of time, each once',
          )
        : undefined,
      mustBe(
        `${path}/${n}/speed`,
        speed,
        'above 0 and at most 70 m/s (250 km/h)',
        si => si > 0 && si <= 70,
        'write the unit of the logger, such as "96 km/h"',
      ),
      before && speed.unit !== before.speed.unit
        ? wrong(
            `${path}/${n}/speed`,
            `${before.speed.unit}, as in the rows before`,
            speed.text,
            'write one run in one unit',
          )
        : undefined,
      before && speed.si > before.speed.si + JUMP
        ? wrong(
            `${path}/${n}/speed`,
            `at most ${before.speed.text}: a kart that rolls out slows`,
            speed.text,
            'cut the trace to where the throttle is shut and the clutch in',
          )
        : undefined,
    ];
  });
  return rows.some(each => each !== undefined) ? rows : whole(path, trace);
}

function whole(path: string, trace: Trace): Found {
  const [first, last] = [trace[0], trace.at(-1)];
  if (!first || !last) return [];
  const slowing = (first.speed.si - last.speed.si) / (last.time.si - first.time.si);
  if (!(slowing >= SLOWING[0]))
    return [
      wrong(
        path,
        'speeds that fall',
        `${first.speed.text} to ${last.speed.text}`,
        'put the rows in order of time; on a slope, run both ways on a more level stretch',
      ),
    ];
  if (slowing > SLOWING[1])
    return [
      wrong(
        path,
        `slowing by rolling, up to ${formatQuantity(SLOWING[1], 'm/s²', 1)}`,
        formatQuantity(slowing, 'm/s²', 1),
        'roll without brake and with the clutch in; was it km/h written as m/s, correct the unit',
      ),
    ];
  return [
    first.speed.si / last.speed.si >= LEAST_FALL
      ? undefined
      : wrong(
          path,
          `from one speed to ${formatQuantity(1 / LEAST_FALL, '%', 0)} of it or less`,
          `${first.speed.text} to ${last.speed.text}`,
          'let it roll further: fast tells the air, slow tells the rolling',
        ),
  ];
}

const above = (path: string, measure: Input['power']): InputProblem | undefined =>
  mustBe(path, measure, 'more than 0', si => si > 0, 'write it without a sign, and not 0');

function kart(input: Input): Found {
  const { mass, 'air density': density, 'turning mass': turning, wind } = input;
  return [
    mustBe('mass', mass, '60 kg to 400 kg, with driver', si => si >= 60 && si <= 400, 'weigh kart and driver together'),
    mustBe(
      'turning mass',
      turning,
      `0 to a fifth of the mass, ${mass.text}`,
      si => si >= 0 && si <= mass.si / 5,
      'write what turning adds, not the whole mass',
    ),
    mustBe(
      'air density',
      density,
      '0.7 to 1.5 kg/m³',
      si => si >= 0.7 && si <= 1.5,
      'ask "air" for it, or write "1.20 kg/m³"',
    ),
    mustBe('wind', wind, '0 or more', si => si >= 0, 'write the most felt, without a sign'),
  ];
}

const missing = (path: string, expected: string, example: string): InputProblem =>
  wrong(path, expected, 'nothing', `add it, for example "${example}"`);

function between({ 'speed from': from, 'speed to': to }: Input): Found {
  if (from && !to) return [missing('speed to', 'both speeds', '50 km/h')];
  if (to && !from) return [missing('speed from', 'both speeds', '100 km/h')];
  return [
    mustBe('speed to', to, '0 or more', si => si >= 0, 'write it without a sign'),
    mustBe('speed from', from, `more than speed to, ${to?.text}`, si => si > (to?.si ?? 0), 'exchange the two speeds'),
  ];
}

function powered({ power, efficiency }: Input): Found {
  if (power && !efficiency) return [missing('efficiency', 'the share of the power that reaches the ground', '90 %')];
  if (efficiency && !power) return [missing('power', 'the power too', '34 kW')];
  return [
    above('power', power),
    mustBe(
      'efficiency',
      efficiency,
      'above 0 and at most 100 %',
      si => si > 0 && si <= 1,
      'write it in per cent, such as "90 %"',
    ),
  ];
}
