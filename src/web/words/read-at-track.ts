/** One line for the record of what was read at the track. */
import type { FactOf } from '../../book/index.ts';
import { own, ownUnitOf } from '../choice/choice.ts';

type Read = FactOf<'weather'> | FactOf<'plug read'> | FactOf<'treads probed'> | FactOf<'fuel used'>;

export const readAtTrackWords = { fact: readText, air: airText };

function readText(fact: Read): string {
  const note = fact.note ? `, ${fact.note}` : '';
  switch (fact.kind) {
    case 'weather': {
      const air = airText(fact);
      return air === '' ? 'Weather' : `Weather ${air}`;
    }
    case 'plug read':
      return `Plug read: ${fact.says}${note}`;
    case 'treads probed':
      return `Treads: ${Object.entries(fact.celsius)
        .map(
          ([tyre, { inside, middle, outside }]) =>
            `${tyre} ${[inside, middle, outside].map(bare).join('/')} ${ownUnitOf('°C')}`,
        )
        .join(', ')}${note}`;
    case 'fuel used':
      return `Fuel used: ${own(`${fact.litres} L`)}${fact.laps === undefined ? '' : ` in ${fact.laps} laps`}${note}`;
  }
}

/** Degrees without their unit. */
const bare = (celsius: number): string => own(`${celsius} °C`).replace(/ .*/, '');

/** As it stands where nobody has to be told that it is the weather. */
function airText({ celsius, pascal, pressureIs, humidity, trackCelsius, note }: FactOf<'weather'>): string {
  return [
    celsius === undefined ? '' : own(`${celsius} °C`),
    pascal === undefined ? '' : `${own(`${Math.round(pascal / 100)} hPa`)}${pressureIs ? ` (${pressureIs})` : ''}`,
    humidity === undefined ? '' : `${Math.round(humidity * 100)} % humidity`,
    trackCelsius === undefined ? '' : own(`track ${trackCelsius} °C`),
    note ?? '',
  ]
    .filter(Boolean)
    .join(', ');
}
