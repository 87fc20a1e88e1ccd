/** One part as the record knows it: where it is, its hours, what is due on it, how it is held. A label opens this page. */
import { withOwnDays } from '../choice/dates.ts';
import './part.css';
import type { FactLine, KartLine } from '../../app/index.ts';
import { Glyph } from '../glyph.tsx';
import { Cell, PrintTitle } from '../parts.tsx';
import { hashOf } from '../place.ts';
import type { Snapshot } from '../session.ts';
import { partWords } from '../words/part.ts';
import { capital, dateOf, factSign, factWords, timeOf } from '../words/reads.ts';
import { Box } from './box.tsx';
import { JointRows } from './joints.tsx';
import { type PartKnown, partKnown, readAbout } from './known.ts';

export type PartProps = {
  readonly snapshot: Snapshot;
  readonly karts: readonly KartLine[];
  readonly what: 'part' | 'box';
  readonly about: string;
  readonly openKart: (name: string) => void;
  /** Writes down a find on a part. */
  readonly find: (part: string, grade: string) => void;
};

const LINES = 12;

export function PartSheet(props: PartProps) {
  const { snapshot, what, karts } = props;
  const { kart, state, due, facts } = snapshot;
  const { kart: of, name } = readAbout(
    props.about,
    karts.map(k => k.name),
  );
  if (of !== '' && of !== kart.name)
    return <OtherKart {...props} of={of} name={name} known={karts.some(k => k.name === of)} />;
  if (what === 'box') return <Box snapshot={snapshot} pile={name} />;
  const known = partKnown(kart, state, due.due, name);
  if (known === undefined)
    return (
      <>
        <h1>{partWords.noSuchPart}</h1>
        <p class="note need">{partWords.kartHasNoPart(kart.name, name)}</p>
      </>
    );
  const step = snapshot.plan.steps.find(s => s.part === name && s.state !== 'done');
  return (
    <>
      <PrintTitle title={partWords.part(name)} kart={kart.name} event={due.event} invented={kart.invented} />
      <h1>{capital(name)}</h1>
      <p class="soft">
        {known.part.kind}, {known.part.system}
        {known.part.maker === undefined ? '' : `, ${known.part.maker}`}
      </p>
      <Where known={known} />
      <div class="answers below no-print">
        {step && (
          <a class="button main full" href={hashOf({ sheet: 'work', step: step.key })}>
            {partWords.work(step.title)}
          </a>
        )}
        <button type="button" class="button" onClick={() => props.find(name, 'safety')}>
          {partWords.writeDownFind}
        </button>
        <a class="button" href={hashOf({ sheet: 'lives', about: name })}>
          {partWords.howLongItLasts}
        </a>
      </div>
      <Finds known={known} />
      <DueRows known={known} />
      <JointRows joints={known.joints} />
      <ItemRows known={known} />
      <History facts={facts} part={name} />
    </>
  );
}

function OtherKart(props: PartProps & { readonly of: string; readonly name: string; readonly known: boolean }) {
  const { of, name, known } = props;
  return (
    <>
      <h1>{capital(name)}</h1>
      <p class="note need">
        {known ? partWords.thisLabelIsOfKart(of, props.snapshot.kart.name) : partWords.thisLabelIsOfKartWhich(of)}
      </p>
      {known && (
        <button type="button" class="button main big wide" onClick={() => props.openKart(of)}>
          {partWords.openKart(of)}
        </button>
      )}
    </>
  );
}

function Where({ known }: { readonly known: PartKnown }) {
  const { on, since, fresh, serial, age } = known;
  return (
    <div class="cells head-gap">
      <Cell label={on ? partWords.onKart : partWords.offKart}>
        {since ? partWords.since(dateOf(since.at)) : partWords.sinceBeforeRecord}
      </Cell>
      <Cell label={partWords.hasRun}>
        {(age.minutes / 60).toFixed(1)} h{age.laps > 0 ? partWords.laps(Math.round(age.laps)) : ''}
      </Cell>
      <Cell label={partWords.thisOnePutOnNew}>{fresh ? dateOf(fresh.at) : partWords.notInRecord}</Cell>
      <Cell label={partWords.serial}>{serial ?? partWords.notSaid}</Cell>
    </div>
  );
}

function Finds({ known: { finds } }: { readonly known: PartKnown }) {
  if (finds.length === 0) return null;
  return (
    <section class="group">
      <h2>
        {partWords.foundAndNotMended} <span>{finds.length}</span>
      </h2>
      <ul class="rows">
        {finds.map(find => (
          <li key={find.fact}>
            <Glyph sign="defect" />
            <div>
              <b>{find.defect}</b>
              <p>
                {dateOf(find.at)}, {find.by}
              </p>
            </div>
            <span class="side">{find.grade}</span>
          </li>
        ))}
      </ul>
    </section>
  );
}

function DueRows({ known: { due } }: { readonly known: PartKnown }) {
  return (
    <section class="group">
      <h2>
        {partWords.dueOnIt} <span>{due.length}</span>
      </h2>
      {due.length === 0 && <p class="note">{partWords.nothingIsDue}</p>}
      <ul class="rows">
        {due.map(one => (
          <li key={one.item}>
            <Glyph sign={one.cause === 'failed' || one.cause === 'found' ? 'defect' : 'due'} />
            <div>
              <b>{one.title}</b>
              <p>{withOwnDays(one.why)}</p>
            </div>
            <span class="side">{one.grade}</span>
          </li>
        ))}
      </ul>
    </section>
  );
}

function ItemRows({ known: { items } }: { readonly known: PartKnown }) {
  if (items.length === 0) return null;
  return (
    <details class="group">
      <summary>
        <h2>
          {partWords.whatIsChecked} <span>{items.length}</span>
        </h2>
      </summary>
      <ul class="rows">
        {items.map(({ item, pass, due }) => (
          <li key={item.id}>
            <Glyph sign={due ? 'due' : 'done'} />
            <div>
              {item.title}
              <p>
                {item.accept}. {pass ? partWords.passed(dateOf(pass.at), pass.by) : partWords.noPassInRecord}
              </p>
            </div>
            <span class="side">{due ? partWords.isDue : partWords.holds}</span>
          </li>
        ))}
      </ul>
    </details>
  );
}

function History({ facts, part }: { readonly facts: readonly FactLine[]; readonly part: string }) {
  const own = facts.filter(({ fact, struck }) => struck === null && isAbout(fact, part)).slice(0, LINES);
  if (own.length === 0) return null;
  return (
    <details class="group">
      <summary>
        <h2>
          {partWords.inRecord} <span>{partWords.theLast(own.length)}</span>
        </h2>
      </summary>
      <ul class="rows">
        {own.map(({ fact }) => (
          <li key={fact.id}>
            <Glyph sign={factSign(fact)} />
            <div>
              {factWords(fact)}
              <p>
                {dateOf(fact.at)} {timeOf(fact.at)}, {fact.by}
              </p>
            </div>
          </li>
        ))}
      </ul>
    </details>
  );
}

function isAbout(fact: FactLine['fact'], part: string): boolean {
  const named = [
    'part' in fact ? fact.part : undefined,
    'item' in fact ? fact.item : undefined,
    'joint' in fact ? fact.joint : undefined,
  ];
  return named.some(name => name === part || name?.startsWith(`${part}/`));
}
