/** Fuel and oil for the session to come, from the litres this kart used. */
import type { Kart } from '../../kart/index.ts';
import { premix } from '../../numbers/index.ts';
import type { Missing, TrackPart } from './model.ts';
import { asked, known, leads, notAsked } from './part.ts';
import type { TrackRecord, TrackSession } from './session.ts';
import { ratioOf } from './settings.ts';

export function fuelPart(kart: Kart, { sessions, coming }: TrackRecord, laps: number | null): TrackPart {
  const mixed = ratioOf(coming.mixed);
  const ratio = kart.engine?.mixingRatio ?? mixed;
  const used = sessions.flatMap(usedIn);
  const reserve = kart.dimensions['fuel reserve'];
  const missing: readonly Missing[] = [
    ...(ratio === undefined
      ? [
          {
            what: 'The mixing ratio is not known.',
            how: 'Write the maker’s into the kart file: engine: mixing ratio: 20:1.',
          },
        ]
      : []),
    ...(laps === null
      ? [{ what: 'How many laps the session has is not known.', how: 'Say it with the question.' }]
      : []),
    ...(used.length === 0
      ? [
          {
            what: 'No session says what fuel it used.',
            how: 'Fill by measure, drain into the measure, write down the difference.',
          },
        ]
      : []),
    ...(reserve === undefined
      ? [
          {
            what: 'What must be left in the tank at the end is not known: reckoned with nothing left.',
            how: 'Look up the fuel sample of the class rules, and write it into the kart file: dimensions: fuel reserve: 1.5 l.',
          },
        ]
      : []),
  ];
  if (ratio === undefined) return notAsked(premix, missing);
  const session = laps !== null && used.length > 0;
  return asked(premix, {
    question: {
      ratio,
      'ratio by': 'volume',
      ...known({ 'ratio before': mixed !== undefined && mixed !== ratio ? mixed : undefined }),
      ...(session
        ? { laps: String(laps), record: used, reserve: reserve?.text ?? '0 l' }
        : { volume: '5 l', 'volume is': 'petrol poured' }),
    },
    from: [
      kart.engine?.mixingRatio === undefined
        ? `Ratio ${ratio}, as it was mixed last; the kart file says none.`
        : `Ratio ${ratio} from the kart file.`,
      ...(session ? [`${used.length} sessions say what they used.`] : ['Oil for 5 l of petrol, as an example.']),
    ],
    missing,
    lead: answer =>
      leads(answer, {
        'fuel to have in the tank': 'in the tank',
        'burnt at most': 'burnt at most',
        'oil to pour': 'oil for 5 l of petrol',
        'ratio by volume': 'petrol to oil',
      }),
    warning: () =>
      mixed !== undefined && Number.parseFloat(mixed) > Number.parseFloat(ratio) * 1.05
        ? `The last mix, ${mixed}, has less oil than ${ratio}: too little oil seizes the engine.`
        : null,
  });
}

function usedIn({ fuel, outing }: TrackSession) {
  const laps = fuel?.laps ?? outing.laps ?? 0;
  return fuel && laps > 0 ? [{ fuel: `${fuel.litres} l`, laps: String(laps) }] : [];
}
