/** One line for the record of what was read at the track. */
import type { FactOf } from '../../book/index.ts';
import { own, ownUnitOf } from '../choice/choice.ts';

type Read = FactOf<'weather'> | FactOf<'plug read'> | FactOf<'treads probed'> | FactOf<'fuel used'>;

export function readAtTrack(fact: Read): string {
  const note = fact.note ? `, ${fact.note}` : '';
  switch (fact.kind) {
    case 'weather':
      return `Weather${weather(fact)}${note}`;
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

function weather({ celsius, pascal, pressureIs, humidity, trackCelsius }: FactOf<'weather'>): string {
  const said = [
    celsius === undefined ? undefined : own(`${celsius} °C`),
    pascal === undefined
      ? undefined
      : `${own(`${Math.round(pascal / 100)} hPa`)}${pressureIs ? ` (${pressureIs})` : ''}`,
    humidity === undefined ? undefined : `${Math.round(humidity * 100)} % humidity`,
    trackCelsius === undefined ? undefined : own(`track ${trackCelsius} °C`),
  ].filter(part => part !== undefined);
  return said.length === 0 ? '' : ` ${said.join(', ')}`;
}
