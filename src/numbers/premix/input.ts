/** The question about fuel and oil, in trade words. */
import { z } from 'zod';
import { mixRatio } from '../mix-ratio.ts';
import { quantity, uncertain } from '../subject.ts';

const used = z.strictObject({
  fuel: quantity('volume', 'used in that session: filled in less drained', '4.6 l'),
  laps: quantity('count', 'driven in it, all of them', '15'),
});

export const schema = z.strictObject({
  ratio: mixRatio("the engine maker's", '20:1'),
  'ratio by': z.enum(['volume', 'mass']).describe('how the maker means it; volume is usual'),
  volume: quantity('volume', 'to mix', '10 l').optional(),
  'volume is': z
    .enum(['mix in the can', 'petrol poured'])
    .describe('all that is in the can at the end, or the petrol poured in now')
    .optional(),
  'in the can': quantity('volume', 'already in it', '2 l').optional(),
  'in the can is': z.enum(['mixed', 'petrol only']).describe('with oil or without').optional(),
  'ratio in the can': mixRatio('of what is in it', '25:1').optional(),
  'petrol density': quantity('density', 'weigh a litre; 0.745 kg/l when not given', '0.745 kg/l').optional(),
  'oil density': quantity('density', 'on its label; 0.90 kg/l when not given', '0.90 kg/l').optional(),
  'ratio before': mixRatio('the one the jets were right with', '25:1').optional(),
  laps: quantity('count', 'of the session', '14').optional(),
  'spare laps': quantity('count', 'formation, slowing down, a longer race; 2 when not given', '2').optional(),
  reserve: quantity('volume', 'that must be left: fuel sample of the rules, pick-up of the tank', '1.5 l').optional(),
  'tank holds': quantity('volume', 'to the brim less what must stay empty', '8.5 l').optional(),
  record: z.array(used).max(1000).describe('what sessions on this track used').optional(),
  'peak power': quantity('power', 'to see whether the record can be true', '29 kW').optional(),
  'lap time': quantity('time', 'with peak power', '52 s').optional(),
  'on the scales': uncertain('mass', 'kart and driver before the session', '182.5 kg ± 0.2 kg').optional(),
  'weighed with': z.enum(['the fill in', 'an empty tank']).describe('what was in the tank on the scales').optional(),
  'least mass': quantity('mass', 'of the class rules, after the race', '175 kg').optional(),
  'other loss': quantity('mass', 'sweat, rubber, oil on the way; 0.4 kg when not given', '0.4 kg').optional(),
});
export type Input = z.output<typeof schema>;
