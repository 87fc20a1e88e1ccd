/** One line for the record of what was read at the track. */
import type { FactOf } from '../../book/index.ts';

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
        .map(([tyre, { inside, middle, outside }]) => `${tyre} ${inside}/${middle}/${outside} °C`)
        .join(', ')}${note}`;
    case 'fuel used':
      return `Fuel used: ${fact.litres} L${fact.laps === undefined ? '' : ` in ${fact.laps} laps`}${note}`;
  }
}

function weather({ celsius, pascal, pressureIs, humidity, trackCelsius }: FactOf<'weather'>): string {
  const said = [
    celsius === undefined ? undefined : `${celsius} °C`,
    pascal === undefined ? undefined : `${Math.round(pascal / 100)} hPa${pressureIs ? ` (${pressureIs})` : ''}`,
    humidity === undefined ? undefined : `${Math.round(humidity * 100)} % humidity`,
    trackCelsius === undefined ? undefined : `track ${trackCelsius} °C`,
  ].filter(part => part !== undefined);
  return said.length === 0 ? '' : ` ${said.join(', ')}`;
}
