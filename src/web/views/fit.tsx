import { useState } from 'preact/hooks';
import { inWords, openOnKart, type Problem, standsOpen, toolsNamed } from '../../app/index.ts';
import type { Reason } from '../../risk/index.ts';
import { withOwnDays } from '../choice/dates.ts';
import { Glyph, type Sign } from '../glyph.tsx';
import { useBeingWritten, useKept } from '../kept.ts';
import { NameEach, toName } from '../lies-open/name-each.tsx';
import { PrintTitle, Refused, Verdict } from '../parts.tsx';
import { hashOf, type Keep } from '../place.ts';
import type { Session, Snapshot } from '../session.ts';
import { useToRefused } from '../to-refused.ts';
import { fitWords } from '../words/fit.ts';
import { capital, dateOf, timeOf } from '../words/reads.ts';
import { signedSince } from './signed.ts';

export type FitProps = {
  readonly snapshot: Snapshot;
  readonly session: Session;
  readonly keep: Keep;
  readonly who: string;
};

/** What stands against running, and the place where a person signs. The program never does. */
export function Fit(props: FitProps) {
  const { snapshot } = props;
  const { fitness } = snapshot;
  return (
    <>
      <PrintTitle
        title={fitWords.releaseSheet}
        kart={snapshot.kart.name}
        event={fitness.event}
        invented={snapshot.kart.invented}
      />
      <h1>{fitWords.isItFitToRun}</h1>
      <div class="fit-page head-gap">
        <div>
          <Verdict fitness={fitness} />
          <PaperSignature snapshot={snapshot} />
          <button
            type="button"
            class="button wide to-sign no-print"
            onClick={() => document.getElementById('signer')?.scrollIntoView({ block: 'center' })}
          >
            {fitWords.toSignature}
          </button>
          <a class="button wide head-gap no-print" href={hashOf({ sheet: 'weak' })}>
            {fitWords.weakLinksWhatWouldHurt}
          </a>
          <Reasons title={fitWords.againstRunning} list={fitness.against} sign="not fit" />
          <Reasons title={fitWords.notKnown} list={fitness.unknown} sign="not known" />
          <Reasons title={fitWords.openBelowSafety} list={fitness.open} sign="due" />
        </div>
        <div>
          <SignForm {...props} />
          <Releases snapshot={snapshot} />
        </div>
      </div>
    </>
  );
}

/** On paper the signature stands on the first sheet, beside the verdict and the count of what follows. */
function PaperSignature({ snapshot }: { readonly snapshot: Snapshot }) {
  const onKart = openOnKart(snapshot.kart, snapshot.state);
  const tools = toolsNamed(onKart);
  const open = standsOpen(snapshot.fitness, onKart).length;
  const signed = signedSince(snapshot);
  return (
    <div class="only-print">
      <p>{fitWords.makersManualRules(open)}</p>
      {tools.map(line => (
        <p key={line}>{capital(line)}.</p>
      ))}
      {signed && <p>{fitWords.signedInRecord({ ...signed, on: `${dateOf(signed.at)} ${timeOf(signed.at)}` })}</p>}
      <div class="signature">
        <div>{fitWords.signatureOfPerson}</div>
        <div>{fitWords.dateAndTime}</div>
      </div>
    </div>
  );
}

function Reasons({
  title,
  list,
  sign,
}: {
  readonly title: string;
  readonly list: readonly Reason[];
  readonly sign: Sign;
}) {
  if (list.length === 0) return null;
  return (
    <section class="group">
      <h2>
        {title} <span>{list.length}</span>
      </h2>
      <ul class="rows">
        {list.map(r => (
          <li key={`${r.what}${r.on}${r.text}`}>
            <Glyph sign={sign} />
            <div>{withOwnDays(r.text)}</div>
            <span class="side">{r.grade}</span>
          </li>
        ))}
      </ul>
    </section>
  );
}

function SignForm(props: FitProps) {
  const { keep, session, snapshot } = props;
  const signing = useKept(keep, 'signer');
  const signer = signing.text || props.who;
  const stated = useKept(keep, 'statement');
  const statement = stated.text;
  /** `again`: what stood open then; to sign all the same is to sign for that. */
  const [refused, setRefused] = useState<{ problems: readonly Problem[]; again?: string }>({ problems: [] });
  const [signed, setSigned] = useState(false);
  const busy = session.view().writing;
  const [isSent, isWritten] = useBeingWritten(session);
  const { form, pressed } = useToRefused(busy);
  const onKart = openOnKart(snapshot.kart, snapshot.state);
  const stands = standsOpen(snapshot.fitness, onKart);
  const all = toName(onKart);
  const [ticked, setTicked] = useState<readonly string[]>([]);
  const named = ticked.filter(one => all.includes(one));
  const toldAll = named.length === all.length;

  const sign = async (sure: boolean): Promise<void> => {
    const recorded = (): void => {
      // Who signs next is asked anew.
      stated.written(statement);
      signing.written(signing.text);
    };
    const signature = { statement: statement.trim(), signer: signer.trim(), sure, seen: stands };
    const written = await isWritten(session.sign(signature, recorded));
    if (written.kind === 'refused') {
      setRefused({ problems: written.problems, ...(written.asksAgain && { again: stands.join('\n') }) });
      return;
    }
    setRefused({ problems: [] });
    setSigned(true);
  };
  return (
    <section class="step no-print" aria-label={fitWords.sign}>
      <header>
        <b>{fitWords.sign}</b>
        <span>{fitWords.openListed(stands.length)}</span>
      </header>
      <form
        ref={form}
        inert={isSent}
        class="step-body"
        onSubmit={e => {
          e.preventDefault();
          pressed();
          void sign(false);
        }}
      >
        <p class="soft">{fitWords.youSignForWhatYou}</p>
        <label for="signer">{fitWords.whoSigns}</label>
        <input
          id="signer"
          required
          autocomplete="name"
          value={signer}
          onInput={e => signing.put(e.currentTarget.value)}
        />
        <label for="statement">{fitWords.whatYouStateIfMore}</label>
        <textarea
          id="statement"
          placeholder={inWords(snapshot.fitness)}
          value={statement}
          onInput={e => stated.put(e.currentTarget.value)}
        />
        <NameEach all={all} named={named} onNamed={setTicked} />
        <Refused problems={refused.problems}>
          {refused.again === stands.join('\n') && (
            <button type="button" class="button wide" disabled={busy || !toldAll} onClick={() => sign(true)}>
              {fitWords.signAllSame}
            </button>
          )}
        </Refused>
        {signed && (
          <p class="note" role="status">
            {fitWords.signedAndInRecord}
          </p>
        )}
        <div class="answers">
          <button type="submit" class="button main big full" disabled={busy || signer.trim() === '' || !toldAll}>
            {busy ? fitWords.writing : toldAll ? fitWords.sign : fitWords.nameWhatIsOpenFirst(named.length, all.length)}
          </button>
          <button type="button" class="button plain full" onClick={() => window.print()}>
            {fitWords.printReleaseSheet}
          </button>
        </div>
      </form>
    </section>
  );
}

function Releases({ snapshot }: { readonly snapshot: Snapshot }) {
  const releases = [...snapshot.state.releases].reverse();
  if (releases.length === 0) return null;
  return (
    <section class="group no-print">
      <h2>
        {fitWords.signedBefore} <span>{releases.length}</span>
      </h2>
      <ul class="rows">
        {releases.map(r => (
          <li key={r.fact}>
            <Glyph sign={r.verdict} />
            <div>
              <b>{r.signer}</b>, {dateOf(r.at)} {timeOf(r.at)}
              {r.event ? `, ${r.event}` : ''}
              <p>{r.statement}</p>
              {r.open.length > 0 && (
                <details>
                  <summary>{fitWords.stoodOpen(r.open.length)}</summary>
                  <ul>
                    {r.open.map(text => (
                      <li key={text}>{withOwnDays(text)}</li>
                    ))}
                  </ul>
                </details>
              )}
            </div>
            <span class="side">{r.verdict}</span>
          </li>
        ))}
      </ul>
    </section>
  );
}
