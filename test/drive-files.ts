/** A drive written in each format, and what a log of text becomes when it is read. */
import { type Imported, type ImportOptions, LogImport, type NotImported } from '../src/laps/index.ts';
import type { DriveRow } from './drive.ts';

export const csvOf = (rows: readonly DriveRow[]): string =>
  [
    'time_s,lat_deg,lon_deg,speed_kmh,heading_deg,rpm',
    ...rows.map(
      ({ time, lat, lon, speed, heading, rpm }) =>
        `${time.toFixed(6)},${lat.toFixed(10)},${lon.toFixed(10)},${(speed * 3.6).toFixed(4)},${heading.toFixed(4)},${rpm}`,
    ),
    '',
  ].join('\n');

const DAY = Date.UTC(2026, 4, 9);

export const gpxOf = (rows: readonly DriveRow[]): string =>
  `<?xml version="1.0" encoding="UTF-8"?>
<gpx version="1.1" creator="invented" xmlns="http://www.topografix.com/GPX/1/1"><trk><trkseg>
${rows
  .map(
    ({ time, lat, lon }) =>
      `<trkpt lat="${lat.toFixed(10)}" lon="${lon.toFixed(10)}"><ele>101.3</ele><time>${new Date(DAY + Math.round(time * 1000)).toISOString()}</time></trkpt>`,
  )
  .join('\n')}
</trkseg></trk></gpx>
`;

export type NmeaOptions = { readonly talker?: string; readonly date?: string; readonly sentences?: string };

/** Times are of the day; the date is written as given, on every row. */
export const nmeaOf = (
  rows: readonly DriveRow[],
  { talker = 'GN', date = '090526', sentences = 'RMC GGA' }: NmeaOptions = {},
): string =>
  rows
    .flatMap(row => {
      const tenths = new Date(Math.round(row.time * 1000)).toISOString().slice(11, 23).replaceAll(':', '');
      const place = `${minutes(row.lat, 2)},${row.lat < 0 ? 'S' : 'N'},${minutes(row.lon, 3)},${row.lon < 0 ? 'W' : 'E'}`;
      const knots = (row.speed * 3600) / 1852;
      const of: Record<string, string> = {
        RMC: `${tenths},A,${place},${knots.toFixed(4)},${row.heading.toFixed(3)},${date},,,A`,
        GGA: `${tenths},${place},1,14,0.8,101.3,M,47.0,M,,`,
        VTG: `${row.heading.toFixed(3)},T,,M,${knots.toFixed(4)},N,,K,A`,
      };
      return sentences.split(' ').map(each => sentence(`${talker}${each},${of[each]}`));
    })
    .join('');

export function sentence(body: string): string {
  let sum = 0;
  for (const letter of body) sum ^= letter.charCodeAt(0);
  return `$${body}*${sum.toString(16).toUpperCase().padStart(2, '0')}\r\n`;
}

function minutes(degrees: number, digits: number): string {
  const all = Math.round(Math.abs(degrees) * 60 * 1e7);
  const whole = Math.floor(all / 60e7);
  return String(whole).padStart(digits, '0') + ((all - whole * 60e7) / 1e7).toFixed(7).padStart(10, '0');
}

export const bytesOf = (text: string): Uint8Array => new TextEncoder().encode(text);

/** Read in pieces that end at these bytes; at once without any. */
export function readLog(
  log: string | Uint8Array,
  options: ImportOptions & { readonly cuts?: readonly number[] } = {},
): Imported | NotImported {
  const bytes = typeof log === 'string' ? bytesOf(log) : log;
  const { cuts = [], ...rest } = options;
  const into = new LogImport(rest);
  let from = 0;
  for (const to of [...cuts, bytes.length]) {
    into.push(bytes.subarray(from, to));
    from = to;
  }
  return into.finish();
}

/** Of a log that must be read. */
export function imported(log: string | Uint8Array, options: Parameters<typeof readLog>[1] = {}): Imported {
  const read = readLog(log, options);
  if (read.kind === 'imported') return read;
  throw new Error(`expected a log, got ${JSON.stringify(read.problem)}`);
}

export const skipped = ({ skipped: list }: Imported | NotImported): Readonly<Record<string, number>> =>
  Object.fromEntries(list.map(({ reason, count }) => [reason, count]));
