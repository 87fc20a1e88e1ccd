/**
 * A release: a person puts a name to the kart as the record shows it. The verdict and what stands open are worked out
 * here and written down as they were shown; the program itself never signs.
 */
import { type Fitness, fitness } from '../risk/index.ts';
import { eventOf, given } from './asking.ts';
import { type OpenOnKart, openOnKart, toolsNamed } from './open-on-kart.ts';
import { refuse } from './problem.ts';
import { type Recorded, refused, type Writer, write } from './record.ts';
import { pastMoment } from './when.ts';

export type Signature = {
  /** Name of the person who signs. */
  readonly signer: string;
  /** What they state in their own words; left out, the verdict in words. */
  readonly statement?: string;
  readonly event?: string;
  readonly at?: string;
  /** Who enters it, when that is not the signer. */
  readonly by?: string;
  /** What stood open as the signer was shown it, `standsOpen` of the page; left out, whatever stands open by now. */
  readonly seen?: readonly string[];
  /** Signing although the record stands against it, after having been shown what does. */
  readonly sure?: boolean;
};

const MOST_TEXT = 500;

export async function release(writer: Writer, kart: string, sign: Signature): Promise<Recorded> {
  const signer = sign.signer.trim();
  const time = pastMoment(sign.at, writer.clock.now());
  if ('problem' in time) return refused(time.problem);
  if (signer === '')
    return refused(
      refuse(
        'signature missing',
        'signer',
        'Expected the name of the person who signs, got none.',
        'Only a person signs: give your name.',
      ),
    );
  await writer.shelf.refresh();
  // Judged at the moment at which it is shown; written after all that the book holds.
  const now = time.at;
  const at = sign.at === undefined ? await writer.shelf.happens(kart, writer.clock.now()) : now;
  const standing = await writer.shelf.at(kart, now, sign.at === undefined ? undefined : now);
  const event = eventOf(standing.state, now, sign.event);
  const shown = fitness(standing.kart, standing.state, { now, ...given({ event }) });
  const open = standsOpen(shown, openOnKart(standing.kart, standing.state));
  if (sign.seen !== undefined && sign.seen.join('\n') !== open.join('\n'))
    return refused(standsOtherwise(open, sign.seen));
  if (shown.verdict !== 'fit' && sign.sure !== true) return refused(against(shown));
  const payload = {
    kind: 'released' as const,
    ...(event ? { event: event.event } : {}),
    signer,
    verdict: shown.verdict,
    open,
    statement: sign.statement?.trim() || inWords(shown),
  };
  return write(writer, [{ kart, payloads: [payload], at }], sign.by?.trim() || signer);
}

/** Everything that stands open, worst first, as it is written into the release. */
export const openOf = ({ against: bars, unknown, open }: Fitness): string[] =>
  [
    ...bars.map(reason => `stands against: ${reason.text}`),
    ...unknown.map(reason => `not known: ${reason.text}`),
    ...open.map(reason => `open, ${reason.grade}: ${reason.text}`),
  ].map(shortened);

/** The list a release carries: what stands open, and the tools that were not counted. */
export const standsOpen = (shown: Fitness, onKart: OpenOnKart): string[] => [
  ...openOf(shown),
  ...toolsNamed(onKart).map(shortened),
];

const shortened = (text: string): string => (text.length > MOST_TEXT ? `${text.slice(0, MOST_TEXT - 1)}…` : text);

/** The statement when the signer adds none. */
export function inWords({ verdict, against: bars, unknown, open }: Fitness): string {
  const rest = `${open.length} below safety open`;
  if (verdict === 'fit') return `Nothing in the record stands against running; ${rest}.`;
  if (verdict === 'not known') return `Not released: ${unknown.length} not known; ${rest}.`;
  return `Not released: ${bars.length} against running, ${unknown.length} not known; ${rest}.`;
}

/** What is signed for is what was read: a fail from another hand, or a day that passed, is read first. */
function standsOtherwise(open: readonly string[], seen: readonly string[]) {
  const came = open.filter(text => !seen.includes(text));
  const went = seen.filter(text => !open.includes(text));
  const few = came.slice(0, 3).map(text => ` ${text.replace(/\.?$/, '.')}`);
  return refuse(
    'stands otherwise',
    'kart',
    `Expected the list that was shown when it was signed, and by now it is another: ${came.length} came, ${went.length} went.${few.join('')}`,
    'Read what stands open now, and sign that.',
  );
}

function against(shown: Fitness) {
  const reasons = [...shown.against, ...shown.unknown];
  const few = reasons.slice(0, 5).map(reason => reason.text);
  const more = reasons.length > few.length ? ` And ${reasons.length - few.length} more.` : '';
  return refuse(
    'not fit',
    'kart',
    `Expected a kart with nothing in its record against running, and it is ${shown.verdict}: ${few.join(' ')}${more}`,
    'Do the work, or sign what is open all the same as sure: the verdict and the list go into the release.',
  );
}
