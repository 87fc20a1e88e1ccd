/** What no mix, tank or session can be, each with what would be right. */
import { incomplete, notAbove, outside, wrong } from '../asked.ts';
import type { InputProblem } from '../subject.ts';
import type { Input } from './input.ts';
import { oilFor } from './oil-for.ts';
import { densitiesOf, oilQuestion } from './work.ts';

export function impossible(input: Input): readonly InputProblem[] {
  const found = [
    ...sizes(input),
    ...can(input),
    ...incomplete(measured(input), ['volume', 'volume is'], 'the oil to pour'),
    ...incomplete(measured(input), ['peak power', 'lap time'], 'a look at the record'),
    ...session(input),
    ...scales(input),
  ];
  return found.length > 0 ? unique(found) : pouring(input);
}

/** Ratios are read numbers, the lists are looked at by themselves. */
const measured = ({ ratio: _r, 'ratio before': _b, 'ratio in the can': _c, record: _l, ...rest }: Input) => rest;

const unique = (found: readonly InputProblem[]): readonly InputProblem[] =>
  found.filter((each, n) => found.findIndex(({ path }) => path === each.path) === n);

function sizes(input: Input): readonly InputProblem[] {
  const given = measured(input);
  const whole = (['laps', 'spare laps'] as const).flatMap(path => {
    const count = input[path];
    return count && !Number.isInteger(count.si)
      ? [wrong(path, 'whole laps', count.text, 'round it up to the next lap')]
      : [];
  });
  return [
    ...notAbove(given, ['volume', 'laps', 'tank holds', 'peak power', 'lap time', 'least mass', 'on the scales']),
    ...notAbove(given, ['in the can', 'spare laps', 'reserve', 'other loss'], true),
    ...whole,
    ...outside(
      given,
      ['volume', 'in the can', 'tank holds'],
      [0, 0.5],
      'l',
      'look at the unit: l is litres, ml is a thousandth',
    ),
    ...outside(given, ['petrol density'], [680, 830], 'kg/l', 'weigh a litre; petrol is 0.715 to 0.775 kg/l'),
    ...outside(given, ['oil density'], [820, 1050], 'kg/l', 'look at its label; two-stroke oil is 0.86 to 0.97 kg/l'),
    ...outside(given, ['lap time'], [15, 600], 's', 'write the time of one lap, in s'),
    ...(input.record ?? []).flatMap(({ fuel, laps }, n) => {
      if (!(laps.si > 0)) return [wrong(`record/${n}/laps`, 'more than 0', laps.text, 'count every lap of that fill')];
      const each = fuel.si / laps.si;
      return each > 0 && each < 0.003
        ? []
        : [
            wrong(
              `record/${n}/fuel`,
              'more than 0 and under 3 l a lap',
              `${fuel.text} in ${laps.text} laps`,
              'write what was filled in less what was drained, in l; leave the session out if nobody measured it',
            ),
          ];
    }),
  ];
}

function can(input: Input): readonly InputProblem[] {
  const [volume, is, ratio] = [input['in the can'], input['in the can is'], input['ratio in the can']];
  if (volume === undefined) {
    const left = is !== undefined ? 'in the can is' : ratio !== undefined ? 'ratio in the can' : undefined;
    return left === undefined
      ? []
      : [wrong('in the can', 'how much is in it', 'nothing', `add it, for example "2 l", or leave out "${left}"`)];
  }
  if (is === undefined)
    return [
      wrong(
        'in the can is',
        '"mixed" or "petrol only"',
        'nothing',
        'say it; if nobody knows, do not run on it and empty the can',
      ),
    ];
  if (is === 'mixed' && ratio === undefined)
    return [
      wrong(
        'ratio in the can',
        'at what ratio it was mixed',
        'nothing',
        'add it, for example "25:1"; if nobody knows, do not run on it: empty the can',
      ),
    ];
  return is === 'petrol only' && ratio !== undefined
    ? [
        wrong(
          'ratio in the can',
          'none: there is petrol only',
          'a ratio',
          'take it out, or write "in the can is": "mixed"',
        ),
      ]
    : [];
}

function session(input: Input): readonly InputProblem[] {
  const { laps, reserve, record } = input;
  const asks = laps ?? reserve ?? record ?? input['spare laps'];
  if (asks === undefined) return [];
  return [
    ...(laps ? [] : [wrong('laps', 'the laps of the session', 'nothing', 'add them, for example "14"')]),
    ...(reserve
      ? []
      : [
          wrong(
            'reserve',
            'what must be left at the end',
            'nothing',
            'look it up in the class rules, and write for example "1.5 l"; "0 l" if none',
          ),
        ]),
    ...(record
      ? []
      : [
          wrong(
            'record',
            'what earlier sessions used',
            'nothing',
            'add fills and their laps; without a record no one can say',
          ),
        ]),
  ];
}

function scales(input: Input): readonly InputProblem[] {
  const weighed = input['on the scales'];
  if (weighed === undefined && input['weighed with'] === undefined && input['least mass'] === undefined) return [];
  const missing = incomplete(
    measured(input),
    ['on the scales', 'weighed with', 'least mass'],
    'the mass at the scales',
  );
  return input.laps
    ? missing
    : [...missing, wrong('laps', 'the laps of the session, for what burns', 'nothing', 'add laps, reserve and record')];
}

/** What is in the can cannot become the mix that is wanted. */
function pouring(input: Input): readonly InputProblem[] {
  const question = oilQuestion(input, densitiesOf(input));
  if (question === undefined) return [];
  const found = oilFor(question);
  if (found.kind === 'pour') return [];
  const litres = `${(Math.ceil(found.mixAtLeast * 1e5) / 100).toFixed(2)} l`;
  const more =
    question.of === 'mix in the can'
      ? `make ${litres} or more`
      : `pour petrol until there are ${litres} or more in the can`;
  return found.kind === 'too much oil in the can'
    ? [
        wrong(
          'in the can',
          'no more oil than the new mix needs',
          `${input['in the can']?.text ?? ''} with more oil than that`,
          `${more}, or begin with an empty can`,
        ),
      ]
    : [
        wrong(
          'volume',
          `at least ${litres}: so much is in the can, with its oil`,
          input.volume?.text ?? 'nothing',
          more,
        ),
      ];
}
