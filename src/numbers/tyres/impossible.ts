/** What tyres cannot be, each with what would be right: gauge and absolute, °C and °F, cold and hot the wrong way round. */
import { formatQuantity, type Measure } from '../../quantity/index.ts';
import { POSSIBLE } from '../air/air-of.ts';
import { wrong } from '../asked.ts';
import { mustBe } from '../must-be.ts';
import type { InputProblem } from '../subject.ts';
import { tyreGasTemperature } from './gas.ts';
import type { Input, RunInput } from './input.ts';

/** No kart tyre is run above this [Pa]: common practice. */
const MOST_GAUGE = 4e5;
const HOTTEST_GAS = 423.15; // K; a tyre is scrap long before: common practice
const TRACK: readonly [number, number] = [253.15, 353.15]; // K

type Found = readonly (InputProblem | undefined)[];

export const impossible = (input: Input): readonly InputProblem[] =>
  [
    ...nothing(input),
    ...wantedProblems(input),
    ...conditions(input),
    ...runs(input),
    ...elsewhere(input),
    ...rear(input),
    ...treads(input),
    ...setOf(input),
  ].filter(each => each !== undefined);

const gaugeProblem = (path: string, measure: Measure | undefined): InputProblem | undefined =>
  mustBe(
    path,
    measure,
    'a gauge pressure above 0 and at most 4 bar',
    si => si > 0 && si <= MOST_GAUGE,
    'write what the gauge shows; is it absolute, take the pressure of the air around off; does the gauge show 0, the tyre is empty or the gauge is not on the valve',
  );
const ambientProblem = (path: string, measure: Measure | undefined): InputProblem | undefined =>
  mustBe(
    path,
    measure,
    'the absolute pressure of the air, 550 to 1085 hPa',
    si => si >= POSSIBLE.pascal[0] && si <= POSSIBLE.pascal[1],
    'write what a barometer at the track shows, such as "1005 hPa"; a tyre gauge reads something else',
  );
const within = (path: string, measure: Measure | undefined, [low, high]: readonly [number, number]) =>
  mustBe(
    path,
    measure,
    `${formatQuantity(low, '°C', 0)} to ${formatQuantity(high, '°C', 0)}`,
    si => si >= low && si <= high,
    'read it again; was it °F, write "75 °F"',
  );
const need = (path: string, expected: string, example: string): InputProblem =>
  wrong(path, expected, 'nothing', `add it, for example "${example}"`);
const above = (path: string, measure: Measure | undefined): InputProblem | undefined =>
  mustBe(path, measure, 'more than 0', si => si > 0, 'write it without a sign, and not 0');

const nothing = (input: Input): Found => {
  const parts = [input.wanted, input.treads, input.record].some(list => list && list.length > 0);
  return parts || input.rear || input.set || input['set elsewhere'] || input['tyre volume'] || input.humidity
    ? []
    : [
        need(
          'wanted',
          'something to work out: wanted, treads, rear, set or set elsewhere',
          '[{ "tyre": "front", "hot": "0.85 bar" }]',
        ),
      ];
};

function wantedProblems(input: Input): Found {
  const list = input.wanted ?? [];
  if (list.length === 0) return [];
  const given = (key: 'ambient pressure' | 'cold temperature', example: string) =>
    input[key] ? undefined : need(key, 'it too, for a cold pressure', example);
  const twice = list.map(({ tyre }, n) =>
    list.some((other, m) => m < n && (tyre.startsWith(other.tyre) || other.tyre.startsWith(tyre)))
      ? wrong(`wanted/${n}/tyre`, 'each tyre once, or its axle', `"${tyre}" again`, 'take one of them out')
      : undefined,
  );
  return [
    given('ambient pressure', '1005 hPa'),
    given('cold temperature', '16 °C'),
    ...list.map(({ hot }, n) => gaugeProblem(`wanted/${n}/hot`, hot)),
    ...twice,
  ];
}

function conditions(input: Input): Found {
  const { record = [], wanted = [] } = input;
  const [cold, hot] = [input['cold temperature'], input['hot temperature']];
  const today = record.length > 0 && wanted.length > 0;
  const said = (key: 'surface' | 'laps' | 'track temperature', example: string) =>
    today && input[key] === undefined ? need(key, 'it too, to find similar days in the record', example) : undefined;
  return [
    said('surface', 'dry'),
    said('laps', '12'),
    said('track temperature', '26 °C'),
    ambientProblem('ambient pressure', input['ambient pressure']),
    gaugeProblem('least pressure', input['least pressure']),
    within('cold temperature', cold, POSSIBLE.kelvin),
    within('track temperature', input['track temperature'], TRACK),
    within('hot temperature', hot, [POSSIBLE.kelvin[0], HOTTEST_GAS]),
    mustBe(
      'hot temperature',
      cold && hot,
      `above the cold one, ${cold?.text}`,
      si => si > (cold?.si ?? 0),
      'exchange the two, or correct one',
    ),
    mustBe('laps', input.laps, '1 or more', si => si >= 1, 'write the laps planned'),
    mustBe(
      'track height',
      input['track height'],
      '-450 m to 5000 m',
      si => si >= -450 && si <= 5000,
      'write the height above the sea',
    ),
    above('tyre volume', input['tyre volume']),
    input['tyre volume'] && !hot
      ? need('hot temperature', 'it too, for the water that a tyre holds', '70 °C')
      : undefined,
    mustBe('humidity', input.humidity, '0 to 100 %', si => si >= 0 && si <= 1, 'write it in per cent, such as "60 %"'),
    input.humidity && wanted.length === 0
      ? need('wanted', 'a pressure too, for the air pumped in', '[{ "tyre": "front", "hot": "0.85 bar" }]')
      : undefined,
  ];
}

const runs = ({ record = [], 'ambient pressure': today }: Input): Found =>
  record.flatMap((run, n) => oneRun(run, `record/${n}`, today));

function oneRun(run: RunInput, at: string, today: Measure | undefined): Found {
  const ambient = run['ambient pressure'] ?? today;
  const plain = [
    gaugeProblem(`${at}/cold`, run.cold),
    gaugeProblem(`${at}/hot`, run.hot),
    within(`${at}/cold temperature`, run['cold temperature'], POSSIBLE.kelvin),
    within(`${at}/track temperature`, run['track temperature'], TRACK),
    mustBe(`${at}/laps`, run.laps, '1 or more', si => si >= 1, 'write the laps run'),
    ambient
      ? undefined
      : need(`${at}/ambient pressure`, 'the pressure of the air, here or for the whole question', '1005 hPa'),
    ambientProblem(`${at}/ambient pressure`, run['ambient pressure']),
    mustBe(
      `${at}/hot`,
      run.hot,
      `above the cold one, ${run.cold.text}`,
      si => si > run.cold.si,
      'exchange the two, or correct one',
    ),
  ];
  if (ambient === undefined || plain.some(each => each !== undefined)) return plain;
  const gas = tyreGasTemperature({
    cold: run.cold.si,
    hot: run.hot.si,
    ambient: ambient.si,
    from: run['cold temperature'].si,
  });
  return gas <= HOTTEST_GAS
    ? []
    : [
        wrong(
          `${at}/hot`,
          `a rise that air can make, up to ${formatQuantity(HOTTEST_GAS, '°C', 0)} in the tyre`,
          `${run.cold.text} to ${run.hot.text}, which asks for ${formatQuantity(gas, '°C', 0)}`,
          'read both again with one gauge; do not mix gauge and absolute',
        ),
      ];
}

const elsewhere = ({ 'set elsewhere': set, 'ambient pressure': here }: Input): Found =>
  set === undefined
    ? []
    : [
        gaugeProblem('set elsewhere/gauge', set.gauge),
        ambientProblem('set elsewhere/ambient pressure', set['ambient pressure']),
        here ? undefined : need('ambient pressure', 'the one here too', '955 hPa'),
      ];

function rear({ rear: axle }: Input): Found {
  if (axle === undefined) return [];
  const [left, right, turns] = [axle['rolled left'], axle['rolled right'], axle.turns];
  const round = (length: Measure) => length.si / turns.si;
  return [
    mustBe('rear/turns', turns, '1 or more', si => si >= 1, 'count whole turns of the wheel'),
    above('rear/contact track', axle['contact track']),
    above('rear/wanted radius', axle['wanted radius']),
    ...(
      [
        ['rear/rolled left', left],
        ['rear/rolled right', right],
      ] as const
    ).map(([path, length]) =>
      mustBe(
        path,
        length,
        'a tyre 0.5 m to 1.3 m round over these turns',
        () => round(length) >= 0.5 && round(length) <= 1.3,
        'measure along the ground over the turns given',
      ),
    ),
    mustBe(
      'rear/rolled right',
      right,
      `within 10 % of the left one, ${left.text}`,
      si => Math.abs(si / left.si - 1) <= 0.1,
      'measure both over the same turns',
    ),
  ];
}

const treads = ({ treads: list = [] }: Input): Found =>
  list.flatMap((tread, n) =>
    (['inside', 'middle', 'outside'] as const).map(place =>
      within(`treads/${n}/${place}`, tread[place], [253.15, HOTTEST_GAS]),
    ),
  );

const setOf = ({ set }: Input): Found =>
  set === undefined
    ? []
    : [
        ...(['heat cycles', 'age'] as const).map(key =>
          mustBe(`set/${key}`, set[key], '0 or more', si => si >= 0, 'write it without a sign'),
        ),
        ...(['most heat cycles', 'most age'] as const).map(key => above(`set/${key}`, set[key])),
      ];
