/** The question about the air, in trade words. */
import { z } from 'zod';
import { quantity, uncertain } from '../subject.ts';

export const KINDS = ['station', 'QNH', 'sea level'] as const;

export const schema = z.strictObject({
  temperature: uncertain('temperature', 'in the shade, moving air, at the height of the carburettor', '21 °C ± 1 °C'),
  pressure: uncertain('pressure-absolute', 'absolute, as the barometer or the report shows it', '985 hPa ± 1 hPa'),
  'pressure is': z
    .enum(KINDS)
    .describe(
      'station: read at the track on a barometer or a phone sensor; QNH: an airfield’s; sea level: a weather map or app',
    ),
  humidity: uncertain(
    'ratio',
    'relative humidity; 50 % and its whole width in the band when not given',
    '60 % ± 5 %',
  ).optional(),
  elevation: uncertain(
    'length',
    'track above the sea; needed from QNH and sea level, and checks a station reading',
    '250 m ± 10 m',
  ).optional(),
  'barometer reads high by': quantity('pressure-gauge', 'against a known station; low is below 0', '0 hPa').optional(),
  'baseline density': uncertain(
    'density',
    'air of the session whose jetting was right',
    '1.180 kg/m³ ± 0.003 kg/m³',
  ).optional(),
  'measured power': quantity('power', 'to be said as in the air of a standard', '29 kW').optional(),
});
export type Input = z.output<typeof schema>;
export type Kind = (typeof KINDS)[number];
