/** What to do, and what to doubt, about the hold of a hub. */
import { formatQuantity } from '../../quantity/index.ts';
import { LEAST_ENGAGEMENT } from '../axle-stack.ts';
import { margin, newtons, preloadWanted } from './figures.ts';
import { FRICTION } from './friction.ts';
import { type Case, least, type Worked } from './work.ts';

const CAUTION =
  "Caution: a hub that slips can leave the axle with its wheel. Kart on a stand that cannot roll, cleaner away from heat and flame; bolts by turns to the hub maker's torque, never beyond it; slot still open; second retention and second look.";

const ALONE: readonly Case[] = ['side', 'braking', 'drive'];
const CASE_WORDS: Readonly<Record<Case, string>> = {
  side: 'the side load',
  braking: 'braking',
  drive: 'drive',
  together: 'torque in a corner',
};

export function say(worked: Worked): readonly string[] {
  const { wanted } = worked;
  const clean = least(worked, 'clean', ALONE);
  const film = least(worked, 'film', ALONE);
  const together = least(worked, 'clean', ['together']);
  const side = (film: 'clean' | 'film') => margin(least(worked, film, ['side'])?.margin ?? Number.NaN).text;
  const holds = (cases: readonly Case[]): boolean => (least(worked, 'clean', cases)?.margin ?? 0) >= wanted;
  const need = `one bolt needs ${newtons(preloadWanted(worked)).text} at least for every load by itself, it has ${newtons(worked.preload).text}`;
  const more = "Use a hub with more or larger bolts, or ask its maker; do not go beyond the maker's torque.";
  return [
    `Clean and dry this hub holds ${side('clean')} times the side load; with a film of oil ${side('film')} times.`,
    ...(clean && film
      ? [
          `The least margin is against ${CASE_WORDS[clean.case]} on the ${clean.wheel} wheel: clean ${margin(clean.margin).text}, with a film ${margin(film.margin).text}; wanted ${wanted}.`,
        ]
      : []),
    ...(together && together.margin < 1
      ? [
          `In a corner with the largest torque, on the ${together.wheel} wheel, friction alone does not hold (${margin(together.margin).text}): the key takes that peak. Look at the key and for turning marks after running.`,
        ]
      : []),
    !holds(['side'])
      ? `Not enough against the side load even when clean: ${need}. ${more}`
      : holds(ALONE)
        ? 'Clean the axle and the bore until a fresh cloth stays clean, dry, then make the bolts by turns.'
        : `Clean, it holds the side load; of braking and drive the key takes peaks: ${need}. ${more}`,
    'On the inner wheel the side load pulls the hub off the end of the axle, on the outer it pushes it inward: the key keeps it from neither, and is not counted here.',
    CAUTION,
  ];
}

export function notes(worked: Worked): readonly string[] {
  const { input, assumed, clamp } = worked;
  const length = input['hub length'];
  const braking = worked.demands.outer.braking;
  return [
    ...(assumed.length > 0 ? [`Taken, because not given (see the card): ${assumed.join(', ')}.`] : []),
    ...(worked.preload === 0 ? ['The bolts hold nothing: the torque only turns the nut.'] : []),
    ...(input['bolt torque'] && !input['running torque']
      ? ['The running torque of a locking nut is not taken off: measure it, and the hold is less by its share.']
      : []),
    ...(clamp.clean.friction > FRICTION.clean || clamp.film.friction > FRICTION.film
      ? [
          `Outside validity: friction above ${FRICTION.clean} clean or ${FRICTION.film} with a film asks for a test on this hub, not a table.`,
        ]
      : []),
    ...(input.contact && input.contact !== 'two lines'
      ? ['Outside the cautious case: this contact holds only where the bore has been measured to bear all round.']
      : []),
    ...(length && length.si < LEAST_ENGAGEMENT - 1e-9
      ? [
          `Too little axle inside the hub: ${length.text}, at least ${formatQuantity(LEAST_ENGAGEMENT, 'mm')} (common practice, or what the maker asks).`,
        ]
      : []),
    ...(braking ? [] : ['Braking and drive are not known: give tyre diameter, or brake torque and engine torque.']),
    ...(length && input['axle wall']
      ? [
          'Stress in the axle wall is for two jaws on bare lines; above the yield of the tube it ovals until the bore bears: look for a mark and measure the axle across.',
        ]
      : []),
    ...(input.interference ? ['The press fit is for a ring without a slot and is added to nothing.'] : []),
    "A pull or a twist test on one's own hub is worth more than any table. The hub maker's manual and the class rules win.",
  ];
}
