/**
 * A release: a person puts a name to the kart as the record shows it. The verdict and what stands open are worked out
 * here and written down as they were shown; the program itself never signs.
 */
import { type Fitness, fitness } from '../risk/index.ts';
import { eventOf, given } from './asking.ts';
import { openOnKart, toolsNamed } from './open-on-kart.ts';
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
  const at = sign.at === undefined ? await writer.shelf.happens(kart, writer.clock.now()) : time.at;
  const standing = await writer.shelf.at(kart, at, sign.at === undefined ? undefined : at);
  const event = eventOf(standing.state, at, sign.event);
  const shown = fitness(standing.kart, standing.state, { now: at, ...given({ event }) });
  if (shown.verdict !== 'fit' && sign.sure !== true) return refused(against(shown));
  const payload = {
    kind: 'released' as const,
    ...(event ? { event: event.event } : {}),
    signer,
    verdict: shown.verdict,
    open: [...openOf(shown), ...toolsNamed(openOnKart(standing.kart, standing.state)).map(shortened)],
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

const shortened = (text: string): string => (text.length > MOST_TEXT ? `${text.slice(0, MOST_TEXT - 1)}…` : text);

/** The statement when the signer adds none. */
export function inWords({ verdict, against: bars, unknown, open }: Fitness): string {
  const rest = `${open.length} below safety open`;
  if (verdict === 'fit') return `Nothing in the record stands against running; ${rest}.`;
  if (verdict === 'not known') return `Not released: ${unknown.length} not known; ${rest}.`;
  return `Not released: ${bars.length} against running, ${unknown.length} not known; ${rest}.`;
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
