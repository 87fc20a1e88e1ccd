/** The spares box as plain lines: how likely the weekend is finished, what to carry, what to buy. */
import type { SparesAnswer } from '../../app/index.ts';
import type { Pile, Purchase, SparesBox } from '../../life/index.ts';
import { CAUTION } from './plan.ts';
import { count, heading, wrap } from './wrap.ts';

export function sparesText({ kart, event, box, unknown, due, consumables }: SparesAnswer): string {
  if (box === null) return wrap(`Kart ${kart}: ${unknown}`);
  const { finish, piles } = box;
  let text = wrap(
    `Kart ${kart}, ${Number(box.hours.toPrecision(3))} h${event === null ? '' : ` of ${event}`}: which spares to carry${limits(box)}.`,
  );
  text += wrap(`${box.note} ${CAUTION}`);
  text += heading('weekends finished, of those like this one');
  text += wrap(`No spares: ${finish.none.words}.`, '  ');
  text += wrap(`The box as it is: ${finish.box.words}.`, '  ');
  text += wrap(`With what follows: ${finish.chosen.words}.`, '  ');
  text += heading('carry');
  const carried = piles.filter(({ carry }) => carry > 0);
  text += carried.map(pileText).join('') || wrap('Nothing.', '  ');
  if (carried.some(({ counted }) => !counted))
    text += wrap('What was never counted is taken as not in the box: kartwright spares have PART N.', '  ');
  text += heading('buy');
  text += purchasesText(box.buy, '  - ') || wrap('Nothing.', '  ');
  text += wrap(`${box.money} of money, ${Number(box.kilograms.toPrecision(3))} kg to carry.`, '  ');
  if (box.more)
    text += wrap(`With ${box.more.money} more: ${box.more.finish.words}; buy ${inLine(box.more.buy)}.`, '  ');
  for (const { money, finish: then } of box.frontier) text += wrap(`For ${money}: ${then.words}.`, '  ');
  for (const { name, why } of piles) if (why) text += wrap(`${name}: ${why}`, '  - ');
  if (due.length > 0) {
    text += heading('new ones that the work which is due puts on');
    text += wrap('They are needed before any spare, and reckoned as new above.', '  ');
    for (const one of due)
      text += wrap(`${one.part}${one.price === null ? '' : `, ${one.price} of money`}: ${one.why}`, '  - ');
  }
  if (consumables.length > 0)
    text += wrap(`That work uses besides: ${consumables.map(({ name }) => name).join(', ')}.`);
  if (box.unknown.length > 0) {
    const parts = box.unknown.map(({ part }) => part).join(', ');
    text += wrap(
      `${count(box.unknown.length, 'part')} can end a weekend and ${box.unknown.length === 1 ? 'has' : 'have'} no chance to count with: ${parts}. Say how long they last: kartwright life guess KIND --half HOURS --tenth HOURS.`,
    );
  }
  return text;
}

function limits({ budget: { money, kilograms, minutes } }: SparesBox): string {
  const all = [
    ...(money === null ? [] : [`for ${money} of money`]),
    ...(kilograms === null ? [] : [`up to ${kilograms} kg`]),
    ...(minutes === null ? [] : [`changed in ${minutes} min`]),
  ];
  return all.length === 0 ? '' : ` ${all.join(', ')}`;
}

const pileText = ({ name, parts, carry, have, fails, changeMinutes }: Pile): string =>
  wrap(
    `${carry} × ${name}${parts.length > 1 ? `, for ${parts.length} parts` : ''} (${have} in the box): needed in ${fails.words}; ${Math.round(changeMinutes)} min to change.`,
    '  - ',
  );

const purchasesText = (buy: readonly Purchase[], mark: string): string =>
  buy.map(({ name, count: n, money }) => wrap(`${n} × ${name}, ${money} of money`, mark)).join('');

const inLine = (buy: readonly Purchase[]): string =>
  buy.length === 0 ? 'nothing' : buy.map(({ name, count: n }) => `${n} × ${name}`).join(', ');
