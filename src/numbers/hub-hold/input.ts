/** The question about a clamped hub, in trade words. */
import { z } from 'zod';
import { quantity } from '../subject.ts';

const size = (meaning: string, example: string) => quantity('length', meaning, example);
const share = (meaning: string, example: string) => quantity('ratio', meaning, example);

export const schema = z.strictObject({
  'axle diameter': size('outside diameter of the axle where the hub clamps', '50 mm'),
  bolts: quantity('count', 'pinch bolts across the slot', '2'),
  'bolt diameter': size('nominal diameter of their thread; with bolt torque', '8 mm').optional(),
  'bolt torque': quantity('torque', 'least torque the wrench is set to; or give preload', '18 N·m').optional(),
  'running torque': quantity('torque', 'torque that the locking nut asks only to turn; taken off', '1 N·m').optional(),
  'nut factor': share('K of torque = K × diameter × preload; 0.20 when not given', '0.20').optional(),
  scatter: share('how far below the nominal the preload may lie; 35 % when not given', '35 %').optional(),
  preload: quantity('force', 'least preload of one bolt, in place of bolt torque', '7300 N').optional(),
  contact: z.enum(['two lines', 'close fit', 'conforming']).optional(),
  'friction clean': share('hub on axle, clean and dry; 0.20 when not given', '0.20').optional(),
  'friction film': share('hub on axle with a film of oil; 0.10 when not given', '0.10').optional(),
  mass: quantity('mass', 'kart with driver, as it runs; or give both wheel loads', '175 kg').optional(),
  'rear share': share('of that mass on the rear wheels; 57 % when not given', '57 %').optional(),
  'outer wheel load': quantity('force', 'on the outer rear tyre in the corner, static', '980 N').optional(),
  'inner wheel load': quantity('force', 'on the inner rear tyre', '490 N').optional(),
  'tyre grip': share('largest force over load; 1.7 when not given', '1.7').optional(),
  'tyre diameter': size('rolling diameter of the rear tyre; for braking and drive', '274 mm').optional(),
  'brake torque': quantity('torque', 'on the whole axle; the tyre decides when not given', '224 N·m').optional(),
  'engine torque': quantity('torque', 'at the crank; with overall ratio', '24.5 N·m').optional(),
  'overall ratio': share('crank turns for one of the axle, in the lowest gear used', '14:1').optional(),
  'driveline efficiency': share('what arrives at the axle; 100 % when not given', '93 %').optional(),
  'dynamic factor': share('on the side load: kerbs, landings; 2 when not given', '2').optional(),
  'torque factor': share('on braking and drive; 1 when not given, because the tyre slips first', '1').optional(),
  'wanted margin': share('hold over load; 1.3 when not given', '1.3').optional(),
  'hub length': size('axle inside the hub', '46 mm').optional(),
  'tyre offset': size('middle of the tyre outboard of the middle of the seat', '60 mm').optional(),
  'axle wall': size('wall of the axle tube', '2 mm').optional(),
  'key width': size('width of the key', '8 mm').optional(),
  'key height': size('full height of the key', '7 mm').optional(),
  'key length': size('length of key inside the hub', '40 mm').optional(),
  'bolt to hinge': size('bolt to the wall opposite the slot', '46 mm').optional(),
  'axle to hinge': size('middle of the axle to that wall', '31 mm').optional(),
  'hub outside diameter': size('of the ring round the axle; with interference', '70 mm').optional(),
  interference: size('how much the free bore is smaller than the axle, over the diameter', '0.02 mm').optional(),
});
export type Input = z.output<typeof schema>;
