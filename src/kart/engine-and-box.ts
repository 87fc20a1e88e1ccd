/** The engine's own sheet and the box of jets and sprockets, from the kart file. */
import { readRatio } from '../numbers/index.ts';
import { type Measure, parseQuantity } from '../quantity/index.ts';
import type { LayeredKart } from './layers.ts';
import type { Box, EngineSheet } from './model.ts';
import type { Report } from './problem.ts';
import { quantityAt } from './quantities.ts';
import { locate, top } from './source.ts';

/** Only what the file speaks of: a kart without a box has an empty one nowhere. */
export function engineAndBox(
  { engine, box }: Pick<LayeredKart, 'engine' | 'box'>,
  report: Report,
): { readonly engine?: EngineSheet; readonly box?: Box } {
  return {
    ...(Object.keys(engine).length > 0 && { engine: sheetOf(engine, report) }),
    ...(Object.keys(box).length > 0 && {
      box: {
        mainJets: sorted(box['main jets']),
        frontSprockets: sorted(box['front sprockets']),
        rearSprockets: sorted(box['rear sprockets']),
      },
    }),
  };
}

function sheetOf(engine: LayeredKart['engine'], report: Report): EngineSheet {
  const numbered = engine['jets are numbered by'];
  const rising = engine.gears?.findIndex((ratio, i, all) => i > 0 && ratio >= (all[i - 1] ?? 0)) ?? -1;
  if (rising > 0)
    report(locate(engine, top(undefined), ['gears', rising]), {
      expected: `a ratio below the ${engine.gears?.[rising - 1]} of the gear before`,
      got: String(engine.gears?.[rising]),
      remedy: 'write the ratios from first to last gear, each turns in for one turn out: 2.29, 1.78, 1.45 ...',
    });
  const limiter = quantityAt(engine, 'limiter', report, 'rotational-speed');
  const mixingRatio = ratioAt(engine, report);
  return {
    ...(engine.primary !== undefined && { primary: engine.primary }),
    ...(engine.gears && { gears: engine.gears }),
    ...(engine.torque && { torque: curveOf(engine.torque, report) }),
    ...(limiter && { limiter }),
    ...(mixingRatio !== undefined && { mixingRatio }),
    ...(numbered && { jetsNumberedBy: numbered }),
    ...(engine.source !== undefined && { source: engine.source }),
  };
}

function curveOf(written: Readonly<Record<string, string>>, report: Report): NonNullable<EngineSheet['torque']> {
  const points: { readonly speed: Measure; readonly torque: Measure }[] = [];
  for (const key of Object.keys(written)) {
    const speed = parseQuantity(key, 'rotational-speed');
    const torque = quantityAt(written, key, report, 'torque');
    if (!speed.ok) report(locate(written, top(undefined), [key]), speed);
    else if (torque) points.push({ speed: speed.value, torque });
  }
  return points.toSorted((a, b) => a.speed.si - b.speed.si);
}

function ratioAt(engine: LayeredKart['engine'], report: Report): string | undefined {
  const written = engine['mixing ratio'];
  if (written === undefined) return undefined;
  const read = readRatio(written);
  if (!read.ok) report(locate(engine, top(undefined), ['mixing ratio']), read);
  return read.ok ? written.trim() : undefined;
}

const sorted = (all: readonly number[] | undefined): readonly number[] =>
  [...new Set(all ?? [])].toSorted((a, b) => a - b);
