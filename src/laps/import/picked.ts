/** Some fixes of a trace, with the line of each in the file. */
import { COLUMNS, type Trace } from '../model.ts';

export type Picked = { readonly trace: Trace; readonly lines: Float64Array };

export function pickedFrom({ trace, lines }: Picked, isKept: (fix: number) => boolean): Picked {
  const kept = (column: Float64Array): Float64Array => column.filter((_, n) => isKept(n));
  const said = COLUMNS.flatMap(name => (trace[name] ? [[name, kept(trace[name])] as const] : []));
  const { zero, time, lat, lon } = trace;
  return {
    trace: { zero, time: kept(time), lat: kept(lat), lon: kept(lon), ...Object.fromEntries(said) },
    lines: kept(lines),
  };
}
