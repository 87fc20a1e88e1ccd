/** What to do, and what to doubt, about the chain. */
import { formatQuantity } from '../../quantity/index.ts';
import { LEAST_WRAP, LINE, ORDER_AT, SLACK, SLACK_SHARES } from './condition.ts';
import { mm, newtons, percent } from './figures.ts';
import type { Links } from './length.ts';
import { seemToFit } from './sizes.ts';
import { SLACK_AIM, type Worked } from './work.ts';

const CAUTION =
  'Caution: engine off, plug cap off, turn by hand only; a finger between chain and sprocket is lost. After a run it is hot. Guard back on before the engine turns.';
const BAND = `${mm(SLACK.least, 0).text} to ${mm(SLACK.most, 0).text}`;

export const say = (worked: Worked): readonly string[] => [
  ...wear(worked),
  ...links(worked),
  ...slack(worked),
  ...line(worked),
  ...pull(worked),
  'Joining link: closed end of the clip leads in the direction of travel, then a second fixing, wire through the clip; a riveted link is better. A clip that was off is not used again.',
  CAUTION,
];

function wear({ wear: found, input }: Worked): readonly string[] {
  if (!found) return [];
  const read = `${percent(found.stretch).text} over new length`;
  const ends = 'New links are never joined to a worn chain, and hooked sprockets go with it.';
  switch (found.verdict) {
    case 'replace':
      return [
        `Replace the chain: ${read}, the limit is ${percent(found.limit).text}${input['measured length']?.half ? ', limits of the reading counted' : ''}. A chain that jumps or breaks can lock the axle and hit people. ${ends}`,
      ];
    case 'order one':
      return [`Order a chain: ${read}; at ${percent(found.limit).text} it is replaced. ${ends}`];
    case 'goes on':
      return [
        `Wear is ${read}: under ${percent(ORDER_AT).text}. Look for stiff links, cracks and lost rollers all round.`,
      ];
    case 'not known':
      return ['Wear is not known: measure again, and until then count it as worn.'];
  }
}

function links({ run }: Worked): readonly string[] {
  if (!run) return [];
  const [best, second] = run.choices;
  if (!best) return ['No even number of links goes round these sprockets near here: measure the distance again.'];
  const said = [
    `${best.links} links: taut with the engine ${moved(best)}, ${mm(best.centre).text} from middle to middle.`,
  ];
  if (best.fits === 'no')
    said.push(
      `The slots do not reach there${second ? `, nor for ${second.links} links (${moved(second)})` : ''}: another tooth on a sprocket, or another mount. No half link.`,
    );
  else if (second && second.fits !== 'no') said.push(`Else ${second.links} links, ${moved(second)}.`);
  if (run.cut === undefined) return said;
  if (run.cut === 0) said.push('The chain at hand has that many.');
  else if (run.cut < 0)
    said.push(`The chain at hand is ${-run.cut} links too short: take a longer one, do not patch it.`);
  else
    said.push(
      `Cut ${run.cut} links off the chain at hand. ${run.cut % 2 === 0 ? '' : 'That is odd: count again, its ends must be two inner links. '}Count twice, cut once; eye protection.`,
    );
  return said;
}

const moved = ({ move }: Links): string => {
  const text = mm(Math.abs(move)).text;
  return Math.abs(move) < 5e-5 ? 'where it is' : `${text} ${move > 0 ? 'away from' : 'toward'} the axle`;
};

function slack({ slack: found, input }: Worked): readonly string[] {
  const how =
    'at the tightest place of a full turn, driver in the seat, engine bolts at their torque (tightening moves it)';
  if (!found) return [`Slack: ${BAND} whole movement at mid-span, ${how}.`];
  const read = `Slack is ${input.slack?.text}, wanted ${BAND} ${how}`;
  const move =
    found.move === undefined
      ? ''
      : ` About ${mm(Math.abs(found.move), 2).text} ${found.move > 0 ? 'away from' : 'toward'} the axle brings ${mm(SLACK_AIM).text}: so little, go by the reading.`;
  switch (found.verdict) {
    case 'tight':
      return [
        `${read}: too tight. Move the engine toward the axle. A tight chain breaks bearings and shafts, and itself.${move}`,
      ];
    case 'slack':
      return [
        `${read}: too slack. Move the engine away from the axle. A slack chain jumps off and can lock the axle.${move}`,
      ];
    case 'right':
      return [`${read}: right.`];
    case 'not known':
      return [`${read}: not known, read it again.`];
  }
}

function line({ input }: Worked): readonly string[] {
  const off = input['out of line'];
  if (!off) return [`Chain line: straight-edge or laser on the faces, within ${mm(LINE.target).text}.`];
  if (off.si > LINE.most)
    return [
      `The sprockets are ${off.text} out of line, more than ${mm(LINE.most).text}: move one before it runs, then read slack again.`,
    ];
  if (off.si > LINE.target)
    return [
      `The sprockets are ${off.text} out of line: no more than ${mm(LINE.most).text}, but bring it under ${mm(LINE.target).text}.`,
    ];
  return [`Chain line ${off.text}: within ${mm(LINE.target).text}.`];
}

function pull({ pull: found }: Worked): readonly string[] {
  if (!found) return [];
  const own = found.own === undefined ? '' : `, and ${newtons(found.own).text} more from its own speed`;
  return [`The chain pulls ${newtons(found.drive).text} at ${formatQuantity(found.speed, 'm/s', 1)}${own}.`];
}

export function notes(worked: Worked): readonly string[] {
  const { input, size, round, run, ripple, pull } = worked;
  const strange = seemToFit(input.chain);
  return [
    ...(strange.length > 0
      ? [
          `${strange.join(', ')} ${strange.length > 1 ? 'have' : 'has'} the same pitch as ${input.chain} and another roller: one on the other’s sprocket eats it. Chain and both sprockets must be of one size.`,
        ]
      : []),
    ...(size.mark === 'read' ? [] : ['Of 219 chain only the pitch was read; roller and width are from memory.']),
    ...(run && run.wrap < LEAST_WRAP
      ? [
          `Outside validity: the front sprocket is wrapped less than ${formatQuantity(LEAST_WRAP, '°', 0)}, it will jump teeth.`,
        ]
      : []),
    ...(run && run.choices[0]?.fits === 'not known'
      ? ['Whether the slots reach is not known: give "room away" and "room toward".']
      : []),
    ...(round.front < 17
      ? [
          `${round.front} teeth in front: chain speed swings by ${formatQuantity(ripple, '%', 1)} over each tooth; 17 or more run smoother (memory).`,
        ]
      : []),
    ...published(worked),
    ...(pull
      ? [
          'In a lower gear the same power pulls harder by the ratio of the gears, until the tyres slip. Starts and missed shifts are worse.',
          size.strength === undefined
            ? `No tensile strength of ${input.chain} chain was read: ask its maker.`
            : `Least tensile strength as printed: ${newtons(size.strength).text}; the working load of its maker is a small part of it.`,
        ]
      : []),
    'Wear: order at 1 % (common practice), replace at 1.5 % on a short fixed drive, never over 3 % or 200 % over the teeth of the larger sprocket (two makers’ answers). The maker of the chain wins.',
  ];
}

/** The published bands of slack at this distance, because they disagree. */
function published({ input: { 'centre distance': centre } }: Worked): readonly string[] {
  if (!centre) return [`A slack of ${BAND} is common practice; the makers' figures win.`];
  const bands = SLACK_SHARES.map(([low, high]) => `${mm(low * centre.si).text} to ${mm(high * centre.si).text}`);
  return [
    `A slack of ${BAND} is common practice. Two fitting texts give ${bands.join(' and ')} at this distance: they disagree, the makers' figures win.`,
  ];
}
