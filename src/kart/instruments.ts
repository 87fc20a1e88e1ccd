/** What readings are taken with, as the library lists it. */
import { type Measure, parseQuantity } from '../quantity/index.ts';
import type { Instrument } from './model.ts';
import type { Report } from './problem.ts';
import { quantityAt } from './quantities.ts';
import type { InstrumentFile } from './shapes.ts';
import { placeIn, type Tree, top } from './source.ts';

/** One entry of the list; undefined when its quantities were reported. */
export function instrumentFrom(name: string, file: InstrumentFile, report: Report): Instrument | undefined {
  const resolution = quantityAt(file, 'resolution', report);
  const inches = quantityAt(file, 'in inches', report, 'length');
  const scale = quantityAt(file, 'scale error', report, scaleDimension(file, resolution));
  if (resolution === undefined || scale === undefined) return undefined;
  for (const [key, one] of Object.entries({ resolution, 'in inches': inches, 'scale error': scale }))
    if (one !== undefined && !(one.si > 0))
      report(placeIn(file as Tree, key) ?? top(undefined), {
        expected: 'more than 0',
        got: one.text,
        remedy: 'write the finest step, and the limits ± of the scale, without a sign',
      });
  return {
    name,
    resolution,
    ...(inches && { inches }),
    scaleError: scale,
    ends: file.reads === 'twice' ? 2 : 1,
    source: file.source,
  };
}

/** A scale error is a share of the reading, or a quantity of the kind that the instrument reads. */
const scaleDimension = (file: InstrumentFile, resolution: Measure | undefined) =>
  parseQuantity(file['scale error'], 'ratio').ok ? 'ratio' : resolution?.dimension;
