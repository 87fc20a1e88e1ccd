/** Two questions, by which a person says how long a kind lasts; a fact of the book, so that a better answer replaces it. */
import { useState } from 'preact/hooks';
import type { Problem } from '../../app/index.ts';
import type { ExpectedLife } from '../../kart/index.ts';
import { Refused } from '../parts.tsx';
import type { Session, Snapshot } from '../session.ts';
import { livesWords } from '../words/lives.ts';
import { dateOf } from '../words/reads.ts';
import type { Draft } from '../written.ts';

export function Expect(props: { readonly kind: string; readonly snapshot: Snapshot; readonly session: Session }) {
  const { kind, snapshot, session } = props;
  const said = snapshot.state.expected[kind];
  const file = snapshot.kart.lives?.[kind];
  const [half, setHalf] = useState(said?.halfHours?.toString() ?? '');
  const [tenth, setTenth] = useState(said?.tenthHours?.toString() ?? '');
  const [interval, setInterval] = useState(said?.interval ?? false);
  const [why, setWhy] = useState(said?.why ?? '');
  const [problems, setProblems] = useState<readonly Problem[]>([]);
  const [written, setWritten] = useState(false);
  const busy = session.view().writing;
  const write = async (): Promise<void> => {
    setWritten(false);
    const drafted = draftOf({ kind, half, tenth, interval, why });
    if ('problems' in drafted) return setProblems(drafted.problems);
    const done = await session.write([drafted.draft]);
    setProblems(done.kind === 'refused' ? done.problems : []);
    setWritten(done.kind === 'written');
  };
  return (
    <section class="group no-print" aria-labelledby="expected">
      <h2 id="expected">{livesWords.howLongDoYouExpect(kind)}</h2>
      <p class="soft">{said ? livesWords.said(said.by, dateOf(said.at)) : livesWords.inHoursOfRunning}</p>
      {file && !said && <p class="soft">{livesWords.kartFileSays(fileWords(file))}</p>}
      <form
        onSubmit={e => {
          e.preventDefault();
          void write();
        }}
      >
        <label>
          {livesWords.inOfThemIsGone}
          <input inputMode="decimal" value={tenth} onInput={e => setTenth(e.currentTarget.value)} />
        </label>
        <label class="tick-box">
          <input type="checkbox" checked={interval} onChange={e => setInterval(e.currentTarget.checked)} />
          {livesWords.thatIsItsMakersService}
        </label>
        <label>
          {livesWords.halfOfThemAreGone}
          <input inputMode="decimal" value={half} onInput={e => setHalf(e.currentTarget.value)} />
        </label>
        <label>
          {livesWords.fromWhatYouKnow}
          <input value={why} maxLength={400} onInput={e => setWhy(e.currentTarget.value)} />
        </label>
        <Refused problems={problems} />
        {written && (
          <p class="note" role="status">
            {livesWords.writtenNumbersAbove}
          </p>
        )}
        <div class="answers">
          <button type="submit" class="button main full" disabled={busy}>
            {busy ? livesWords.writing : livesWords.writeItDown}
          </button>
        </div>
      </form>
    </section>
  );
}

const fileWords = ({ tenthGoneBy, halfGoneBy, source }: ExpectedLife): string =>
  [
    ...(tenthGoneBy ? [livesWords.inGone(tenthGoneBy.text)] : []),
    ...(halfGoneBy ? [livesWords.half(halfGoneBy.text)] : []),
    `from ${source}`,
  ].join(', ');

export type Said = {
  readonly kind: string;
  readonly half: string;
  readonly tenth: string;
  readonly interval: boolean;
  readonly why: string;
};

/** The fact that is meant; a number that is none is refused here, the rest by the book. */
export function draftOf({
  kind,
  half,
  tenth,
  interval,
  why,
}: Said): { readonly draft: Draft } | { readonly problems: readonly Problem[] } {
  const answers = [
    ['halfHours', half],
    ['tenthHours', tenth],
  ] as const;
  const read = answers
    .filter(([, text]) => text.trim() !== '')
    .map(([key, text]) => [key, Number(text.trim().replace(',', '.'))] as const);
  const wrong = read.filter(([, hours]) => !(hours > 0 && Number.isFinite(hours)));
  if (wrong.length > 0)
    return {
      problems: wrong.map(([where]) => ({
        code: 'wrong shape',
        where,
        message: livesWords.expectedHoursAbove(where, where === 'halfHours' ? half : tenth),
        remedy: livesWords.writeHoursOfRunning,
      })),
    };
  return {
    draft: {
      kind: 'life expected',
      of: kind,
      ...Object.fromEntries(read),
      ...(interval && tenth.trim() !== '' ? { interval } : {}),
      ...(why.trim() === '' ? {} : { why: why.trim() }),
    },
  };
}
