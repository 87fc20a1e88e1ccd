/** Weak links as plain lines: what alone is enough first and complete, then the numbers, then what to fit. */
import type { WeakLinksAnswer } from '../../app/index.ts';
import type { Fitting, Outcome, SinglePoint } from '../../risk/index.ts';
import { CAUTION } from './plan.ts';
import { count, heading, wrap } from './wrap.ts';

export function weakLinksText({ kart, event, hazards, seconds, note }: WeakLinksAnswer): string {
  const until = event === null ? 'no event ahead' : `over ${event}`;
  return (
    wrap(`Kart ${kart}, ${until}: what would hurt us.`) +
    wrap(`${note} ${CAUTION}`) +
    hazards.map(hazardText).join('') +
    fittingsText(seconds)
  );
}

const GROUPS: readonly (readonly [SinglePoint['sort'], string])[] = [
  ['joint', 'one retention'],
  ['one hand', 'two retentions, by what takes both at once'],
  ['shared', 'one thing in common'],
  ['part', 'the part itself'],
];

function hazardText({
  severity,
  hazard,
  function: name,
  singlePoints,
  cutSets,
  top,
  atLeast,
  unknown,
  links,
  season,
}: WeakLinksAnswer['hazards'][number]): string {
  let text = heading(`${name}: severity ${severity}, ${hazard}`);
  if (cutSets === null) return text + wrap('Too large to work out: nothing is said of it.', '  ');
  text += wrap(
    `${count(singlePoints.length, 'link')} that alone ${singlePoints.length === 1 ? 'is' : 'are'} enough:`,
    '  ',
  );
  for (const [sort, title] of GROUPS) {
    const of = singlePoints.filter(point => point.sort === sort);
    if (of.length === 0) continue;
    if (sort === 'part' || sort === 'one hand')
      text += wrap(`${title}: ${of.map(({ says }) => says).join(sort === 'part' ? ', ' : '; ')}.`, '  - ');
    else for (const point of of) text += wrap(`${point.sentence}${couldAdd(point)}`, '  - ');
  }
  const orders = cutSets.byOrder.slice(1).map((sets, n) => `${sets} of ${n + 2} together`);
  if (orders.length > 0) text += wrap(`Besides: ${orders.join(', ')}.`, '  ');
  if (top) text += wrap(`Likely over the event: ${top.words}. ${top.basis}`, '  ');
  else if (atLeast)
    text += wrap(
      `At least ${atLeast.words}, from what is known alone. ${atLeast.basis} ${count(unknown.length, 'link')} with neither record nor guess: the whole is not known.`,
      '  ',
    );
  else text += wrap('How likely: not known, there is neither record nor guess.', '  ');
  if (season)
    text += wrap(
      `Over a season of ${count(season.events, 'event')} alike: ${season.whole ? '' : 'at least '}${season.words}. Code ${season.code}, ${season.level}${season.whole ? '' : ', or graver'}: it orders hazards, no more.`,
      '  ',
    );
  const [most] = links;
  if (most) text += wrap(`Most is bought at ${most.says}: ${most.buys}.`, '  ');
  return text;
}

const couldAdd = ({ couldAdd: names }: SinglePoint): string =>
  names.length === 0 ? '' : ` A second could be: ${names.join(', ')}.`;

function fittingsText({ budget, chosen, more, candidates, frontier }: WeakLinksAnswer['seconds']): string {
  if (candidates.length === 0) return '';
  const limits = [
    budget.minutes === null ? [] : [`${budget.minutes} min`],
    budget.money === null ? [] : [`${budget.money} of money`],
  ].flat();
  let text = heading(`second retentions${limits.length === 0 ? '' : ` for ${limits.join(' and ')}`}`);
  if (chosen.fittings.length === 0) text += wrap('Nothing can be fitted for that.', '  ');
  text += chosen.fittings.map(one => wrap(fittingText(one), '  - ')).join('');
  text += wrap(`${chosen.minutes} min, ${chosen.money} of money. ${left(chosen)}`, '  ');
  for (const { function: name, words } of chosen.hazards) text += wrap(`${name}: ${words}, from what is known.`, '  ');
  if (more) {
    const had = new Set(chosen.fittings.map(one => `${one.joint} ${one.retention}`));
    const added = more.outcome.fittings.filter(one => !had.has(`${one.joint} ${one.retention}`));
    text += wrap(
      `With ${more.minutes} more minutes: ${added.map(fittingText).join('; ')}. ${left(more.outcome)}`,
      '  ',
    );
  }
  text += frontierText(frontier);
  return text + wrap('Make one a job: kartwright weak-links fit "PART/JOINT" --with "RETENTION".', '  ');
}

/** Risk against minutes, with the money there is: only budgets that leave fewer joints or less risk where it can hurt worst. */
function frontierText(frontier: WeakLinksAnswer['seconds']['frontier']): string {
  if (frontier.length < 2) return '';
  let [text, before] = ['', ''];
  const told = new Map<string, string>();
  for (const { minutes, money, singlesLeft, hazards } of frontier) {
    const joints = `${singlesLeft.severity1} and ${singlesLeft.severity2} left`;
    const gained = hazards.filter(
      ({ severity, words, function: name }) =>
        severity === 1 && told.get(name) !== words && !/from (\S+) to \1 /.test(words),
    );
    if (joints === before && gained.length === 0) continue;
    for (const { function: name, words } of gained) told.set(name, words);
    before = joints;
    const risk = gained.map(({ function: name, words }) => `${name} ${words}`).join(', ');
    text += wrap(`${minutes} min, ${money} of money: ${joints}${risk === '' ? '' : `; ${risk}`}`, '  - ');
  }
  return (
    wrap(
      'By minutes: joints that alone are enough, of severity 1 and 2, and what changes where it can hurt worst:',
      '  ',
    ) + text
  );
}

const fittingText = ({ joint, retention, minutes, money, needs }: Fitting): string =>
  `${joint}: ${retention}, ${minutes} min, ${money} of money${needs === '' ? '' : ` (needs ${needs})`}`;

const left = ({ singlesLeft: { severity1, severity2 } }: Outcome): string =>
  `Joints left that alone are enough and could have a second: ${severity1} of severity 1, ${severity2} of severity 2.`;
