/** Which tie rods to turn, which way and how many turns: the answer of the alignment number to what was read. */
import type { Item, Kart } from '../kart/index.ts';
import { alignment, type Judgement } from '../numbers/index.ts';
import { formatQuantity } from '../quantity/index.ts';

type ToeMove = { readonly move: string | null; readonly say: readonly string[] };

export function toeMove(kart: Kart, item: Item, judged: Judgement): ToeMove {
  const { dimensions } = kart;
  const wanted = item.measure?.target;
  const [over, read] = [dimensions['wanted toe diameter'], dimensions['measuring diameter']];
  if (wanted === undefined || over === undefined || read === undefined) return { move: null, say: [] };
  const rods = rodsOf(kart);
  const answer = alignment.ask({
    'toe-out total': formatQuantity(judged.mean.si, 'mm', 6),
    'measuring diameter': read.text,
    'wanted toe-out': wanted.text,
    'wanted toe diameter': over.text,
    ...rods.known,
  });
  if (answer.kind === 'problems') return { move: null, say: [] };
  const [state, ...work] = answer.say;
  // Near enough, one sentence says to leave them; else which way, how far and with what caution.
  const turned = judged.target?.way !== 'on' && work.length > 1;
  return { move: turned ? [...work, ...rods.wanting].join(' ') : null, say: state === undefined ? [] : [state] };
}

/** What the kart file says of arms and rods, as the alignment number asks it; what is wanting, in a sentence. */
function rodsOf({ dimensions }: Kart): {
  readonly known: Readonly<Record<string, string>>;
  readonly wanting: readonly string[];
} {
  const [arm, pitch, threads] = [
    dimensions['steering arm'],
    dimensions['rod thread pitch'],
    dimensions['rod threads moved'],
  ];
  const wanting = [
    ...(arm ? [] : ['"steering arm"']),
    ...(pitch ? [] : ['"rod thread pitch"']),
    ...(threads ? [] : ['"rod threads moved"']),
  ];
  const known = {
    ...(arm && {
      'steering arm': formatQuantity(Math.abs(arm.si), 'mm', 3),
      'steering arms': arm.si < 0 ? 'ahead' : 'behind',
    }),
    ...(arm &&
      pitch &&
      threads && { 'rod thread pitch': pitch.text, 'rod threads': threads.si === 2 ? 'left and right' : 'one' }),
  };
  return {
    known,
    wanting:
      wanting.length === 0 ? [] : [`For the turns, add ${wanting.join(', ')} under dimensions of the kart file.`],
  };
}
