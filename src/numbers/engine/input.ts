/** The question about the engine, in trade words: any of its groups, the rest is not answered. */
import { z } from 'zod';
import { quantity, uncertain } from '../subject.ts';
import { DATUMS } from './ports.ts';

const size = (meaning: string, example: string) => quantity('length', meaning, example);
const angle = (meaning: string, example: string) => quantity('angle', meaning, example);
const speed = (meaning: string, example: string) => quantity('rotational-speed', meaning, example);
const solder = (where: string, how: string) =>
  uncertain('length', `solder crushed at the ${where} edge of the piston; ${how}`, '0.85 mm ± 0.02 mm').optional();

const ignition = z.strictObject({
  drop: size('of the piston before top, read on the gauge', '1.6 mm').optional(),
  angle: angle('before top, in place of the drop', '18°').optional(),
  'gauge tilt': angle('of the gauge from the line of the bore; 0° when not given', '0°').optional(),
});
const ports = z.strictObject({
  exhaust: size('height of the exhaust roof', '25.5 mm').optional(),
  transfer: size('height of the transfer roof, the highest of them', '41 mm').optional(),
  'measured from': z
    .enum(DATUMS)
    .optional()
    .describe('where the gauge stood at 0: asked, because the three differ by tens of degrees'),
  'crown below the cylinder top': size('at top dead centre; above the cylinder top below 0', '0.3 mm').optional(),
});
const chamber = z.strictObject({
  liquid: quantity('volume', 'that fills the chamber at top dead centre', '15.2 ml'),
  'filled to': z
    .enum(['under the plug thread', 'top of the plug thread'])
    .describe('how far up the plug hole the liquid stood'),
  'plug thread': quantity(
    'volume',
    'of the hole that the liquid filled; with top of the plug thread',
    '2.4 ml',
  ).optional(),
});
const squish = z.strictObject({
  left: solder('left', 'over the gudgeon pin, where the piston does not rock'),
  right: solder('right', 'over the gudgeon pin, as on the left'),
  front: solder('front', 'the piston rocks here, so the tighter of two tries'),
  back: solder('back', 'the tighter of two tries, as at the front'),
  least: size("the maker's least squish; 0.75 mm when not given (common practice)", '0.8 mm').optional(),
  'chamber diameter': size('inner edge of the squish band', '38 mm').optional(),
});
const pipe = z.strictObject({
  'tuned speed': speed('at which the pipe is to work best', '12500 rpm'),
  'gas temperature': quantity('temperature', 'mean of the gas in the pipe', '450 °C').optional(),
  'wave speed': quantity('speed', 'of sound in the gas, in place of its temperature', '518 m/s').optional(),
  'exhaust duration': angle('when no exhaust roof is given', '196°').optional(),
  'header diameter': size('inside, at the start of the pipe', '38 mm').optional(),
  'diffuser half-angle': angle('of the opening cone', '4°').optional(),
  'baffle half-angle': angle('of the closing cone', '10°').optional(),
});
const reading = z.strictObject({
  ran: quantity('time', 'running since piston and ring were new', '2 h'),
  compression: uncertain('pressure-gauge', 'the highest the gauge showed', '10.2 bar ± 0.2 bar'),
  gauge: z
    .string()
    .min(1)
    .max(40)
    .describe('which gauge: its name or number')
    .meta({ examples: ['workshop 1'] }),
  engine: z.enum(['hot', 'cold']).describe('when it was read'),
  throttle: z.enum(['held open', 'shut']).describe('when it was read'),
});

export const schema = z.strictObject({
  stroke: size('of the crank, twice its radius', '54.5 mm').optional(),
  rod: size('connecting rod, centre to centre', '110 mm').optional(),
  bore: size('of the cylinder', '54 mm').optional(),
  'gudgeon offset': size(
    'of the pin from the axis of the crank, without a sign; none when not given',
    '0.5 mm',
  ).optional(),
  'offset toward': z
    .enum(['falling side', 'rising side'])
    .optional()
    .describe('falling side: where the crank pin goes down after top'),
  ignition: ignition.optional(),
  ports: ports.optional(),
  'base gasket change': size('thicker above 0, thinner below', '0.2 mm').optional(),
  chamber: chamber.optional(),
  squish: squish.optional(),
  'engine speed': speed('of the crank, for the piston and the mean pressure', '12500 rpm').optional(),
  power: quantity('power', 'at the crank at that speed', '28 kW').optional(),
  pipe: pipe.optional(),
  'compression readings': z.array(reading).max(500).optional().describe('of one piston and ring'),
});
export type Input = z.output<typeof schema>;
