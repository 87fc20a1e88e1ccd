/** A chain of lengths: how far off its sum can be, and the chance that it lies inside its limits. */
import { z } from 'zod';
import { type Dimension, formatQuantity, type Measure } from '../quantity/index.ts';
import type { Card } from './card.ts';
import { combine, type Link, rootSumSquare, sum, worstCase } from './chain.ts';
import { acceptance, chanceInside } from './conformance.ts';
import { chance, pure } from './figure.ts';
import {
  type Answer,
  type Figure,
  type InputProblem,
  type Problems,
  problems,
  quantity,
  subject,
  uncertain,
} from './subject.ts';

const card: Card = {
  what: 'A size made of several, each known within limits or with a standard uncertainty, and held against its limits.',
  equation:
    'Y = Σ c X;  worst T = Σ |c| a;  RSS = √Σ (c a)²;  u² = Σ (c a)²/3 + Σ (c s)²;  p = Φ((TU - Y)/u) - Φ((TL - Y)/u)',
  symbols: {
    X: 'size of one link [m]',
    c: 'times it stands in the sum, below 0 where it takes away [1]',
    a: 'limits ± of a link; 3 s counts as limits where only s is known (common practice) [m]',
    s: 'standard uncertainty of a link [m]',
    u: 'combined standard uncertainty [m]',
    TL: 'least size allowed [m]',
    TU: 'largest size allowed [m]',
    p: 'chance that the true size is inside its limits [1]',
  },
  validity: 'Independent links; nothing known of where between its limits a link lies; a sum that is nearly normal.',
  sources: ['stack-up', 'jcgm-100', 'jcgm-106', 'ilac-g8', 'as-26'],
};

const LENGTH: Dimension = 'length';
const link = z.strictObject({
  name: z.string().max(100).optional(),
  size: uncertain(LENGTH, 'size with its limits; below 0 only for a correction', '40 mm ± 0.1 mm'),
  times: quantity('ratio', 'how often it stands in the sum: 1, -1, 2', '1').optional(),
  standard: quantity(LENGTH, 'standard uncertainty, in place of limits or beside them', '0.6 mm').optional(),
  freedom: quantity('count', 'degrees of freedom of the standard uncertainty', '2').optional(),
});
const schema = z.strictObject({
  links: z.array(link).min(1).max(100),
  min: quantity(LENGTH, 'least size allowed', '2.8 mm').optional(),
  max: quantity(LENGTH, 'largest size allowed', '3.2 mm').optional(),
  confidence: quantity('ratio', 'chance wanted for one side', '95 %').optional(),
});
type Input = z.output<typeof schema>;

export const tolerance = subject({
  name: 'tolerance',
  title: 'Tolerance: a chain of sizes, worst case and likely, and its chance of being inside limits',
  card,
  schema,
  example: {
    links: [
      { name: 'housing', size: '40 mm ± 0.1 mm' },
      { name: 'bearing', size: '25 mm ± 0.05 mm', times: '-1' },
      { name: 'washer', size: '2 mm ± 0.03 mm', times: '-1' },
      { name: 'spacer', size: '10 mm ± 0.05 mm', times: '-1' },
    ],
    min: '2.8 mm',
    max: '3.2 mm',
  },
  solve,
});

function solve(input: Input): Answer | Problems {
  const against = contradictions(input);
  if (against.length > 0) return problems(...against);
  const links = input.links.map(toLink);
  const value = sum(links);
  const { u, freedom } = combine(links);
  const unit = input.links[0]?.size.unit ?? 'mm';
  const size = (si: number): Figure => ({ si, unit, text: formatQuantity(si, unit, 3) });
  const figures: Record<string, Figure> = {
    size: size(value),
    'worst case': size(worstCase(links)),
    'root sum square': size(rootSumSquare(links)),
    'standard uncertainty': size(u),
    'expanded uncertainty': size(2 * u), // k = 2
    ...(Number.isFinite(freedom) ? { 'degrees of freedom': pure(freedom) } : {}),
  };
  const bounds = limits(input.min, input.max);
  const wanted = input.confidence?.si ?? 0.95;
  const say = [
    `The size is ${size(value).text} ± ${size(worstCase(links)).text} at worst, standard uncertainty ${size(u).text}.`,
  ];
  if (bounds !== undefined) {
    const p = chanceInside(value, u, bounds);
    const accept = acceptance(bounds, u, wanted);
    figures['chance inside limits'] = chance(p);
    if (accept.min !== undefined) figures['least reading that proves it'] = size(accept.min);
    if (accept.max !== undefined) figures['largest reading that proves it'] = size(accept.max);
    const proven =
      (accept.min === undefined || value >= accept.min) && (accept.max === undefined || value <= accept.max);
    const level = formatQuantity(wanted, '%');
    say.push(
      proven
        ? `Inside its limits at ${level} for each side; the chance is ${chance(p).text}.`
        : `Not shown to be inside its limits at ${level}; the chance is ${chance(p).text}. Measure more finely, or bring the size nearer the middle.`,
    );
  }
  return { kind: 'answer', figures, say, notes: notes(input, freedom) };
}

const toLink = (l: Input['links'][number]): Link => ({
  times: l.times?.si ?? 1,
  size: l.size.si,
  half: l.size.half ?? 0,
  standard: l.standard?.si ?? 0,
  ...(l.freedom ? { freedom: l.freedom.si } : {}),
});

const limits = (min?: Measure, max?: Measure) =>
  min || max ? { ...(min ? { min: min.si } : {}), ...(max ? { max: max.si } : {}) } : undefined;

function contradictions({ links, min, max, confidence }: Input): readonly InputProblem[] {
  const found: InputProblem[] = [];
  if (min && max && min.si > max.si)
    found.push({
      path: 'min',
      expected: `at most max, ${max.text}`,
      got: min.text,
      remedy: 'exchange min and max, or correct one',
    });
  if (confidence && !(confidence.si >= 0.5 && confidence.si < 1))
    found.push({
      path: 'confidence',
      expected: 'from 50 % to below 100 %',
      got: confidence.text,
      remedy: 'write for example "95 %"',
    });
  links.forEach(({ standard, freedom }, n) => {
    if (standard && standard.si < 0)
      found.push({
        path: `links/${n}/standard`,
        expected: '0 or more',
        got: standard.text,
        remedy: 'write it without a sign',
      });
    if (freedom && !(freedom.si >= 1))
      found.push({ path: `links/${n}/freedom`, expected: '1 or more', got: freedom.text, remedy: 'readings less one' });
  });
  return found;
}

function notes(input: Input, freedom: number): readonly string[] {
  const blank = input.links.flatMap((l, n) =>
    l.size.half === undefined && l.standard === undefined ? [l.name ?? `link ${n + 1}`] : [],
  );
  return [
    ...(blank.length > 0 ? [`Taken as exact, because no limits were given: ${blank.join(', ')}.`] : []),
    ...(freedom < 30
      ? ['Few degrees of freedom: the chances, which take a normal spread, are too hopeful. Take more readings.']
      : []),
  ];
}
