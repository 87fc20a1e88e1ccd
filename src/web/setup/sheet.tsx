/** The set-up sheet: how the kart stands, what differs and from when, what is said of it, what this kart showed. */
import { own } from '../choice/choice.ts';
import './setup.css';
import { useMemo, useState } from 'preact/hooks';
import { type Moment, type Setting, type SetupSheet, setupSheet } from '../../prep/index.ts';
import { PrintSign, PrintTitle, Refused } from '../parts.tsx';
import { hashOf, type Keep } from '../place.ts';
import type { Snapshot } from '../session.ts';
import { dateOf, timeOf } from '../words/reads.ts';
import { setupWords } from '../words/setup.tsx';
import { DAY, dayField, momentOf } from './against.ts';
import { useSetupEffects } from './effects.ts';
import { Hints, Showed } from './said.tsx';

export type SetupProps = {
  readonly snapshot: Snapshot;
  readonly keep: Keep;
  /** To the place where a change is written down. */
  readonly change: () => void;
};

export function Setup({ snapshot, keep, change }: SetupProps) {
  const slot = `setup against ${snapshot.kart.name}`;
  const [chosen, setChosen] = useState(keep.get(slot));
  const { effects, problems } = useSetupEffects();
  const sheet = useMemo(() => {
    const facts = snapshot.facts.map(({ fact }) => fact);
    const said = effects === undefined ? {} : { effects };
    const plain = setupSheet(snapshot.kart, facts, said);
    const against = momentOf(chosen, plain.sessions);
    return against === undefined ? plain : setupSheet(snapshot.kart, facts, { ...said, against });
  }, [snapshot, effects, chosen]);
  return (
    <>
      <PrintTitle
        title={setupWords.setUpSheet}
        kart={sheet.kart}
        event={snapshot.fitness.event}
        invented={snapshot.kart.invented}
      />
      <p class="no-print">
        <a class="back" href={hashOf({ sheet: 'kart' })}>
          {setupWords.kartFromAbove}
        </a>
      </p>
      <h1 class="no-print">{setupWords.setUp}</h1>
      <p class="soft">
        {setupWords.makersSheetAndClass(
          sheet.at === null ? setupWords.nothingIsInRecordYet : setupWords.asRecordHad(moment(sheet.at)),
        )}
      </p>
      <div class="answers no-print">
        <button type="button" class="button" onClick={change}>
          {setupWords.writeChange}
        </button>
        <button type="button" class="button plain" onClick={() => window.print()}>
          {setupWords.print}
        </button>
      </div>
      <div class="setup-page head-gap">
        <div>
          <Against
            sheet={sheet}
            chosen={chosen}
            onChosen={next => {
              keep.set(slot, next);
              setChosen(next);
            }}
          />
          <Differences sheet={sheet} />
          <Refused problems={problems} />
        </div>
        <Settings sheet={sheet} />
        <Hints sheet={sheet} />
        <Showed sheet={sheet} />
      </div>
      <PrintSign who={setupWords.signatureOfWhoSet} />
    </>
  );
}

function Settings({ sheet: { settings, tyres } }: { readonly sheet: SetupSheet }) {
  return (
    <section class="group standing" aria-labelledby="setup-now">
      <h2 id="setup-now">
        {setupWords.asItStands} <span>{setupWords.settings(settings.length)}</span>
      </h2>
      {settings.length === 0 && <p class="note">{setupWords.noSettingIsInRecord}</p>}
      {settings.length > 0 && (
        <table class="print settings">
          <thead>
            <tr>
              <th scope="col">{setupWords.setting}</th>
              <th scope="col">{setupWords.value}</th>
              <th scope="col">{setupWords.since}</th>
            </tr>
          </thead>
          <tbody>
            {settings.map(one => (
              <Row key={one.name} {...one} />
            ))}
          </tbody>
        </table>
      )}
      {tyres !== null && <p class="note">{setupWords.tyres(tyres)}</p>}
    </section>
  );
}

const Row = ({ name, part, value, from, at, by }: Setting) => (
  <tr>
    <th scope="row">
      <span>{name}</span>
      {part !== null && <small class="soft"> {part}</small>}
    </th>
    <td class="value">{unbroken(own(value))}</td>
    <td class="soft">
      {(from === 'reading' ? setupWords.readBy : setupWords.setBy)(dateOf(at), <span class="whole">{by}</span>)}
    </td>
  </tr>
);

/** A line never ends between a number and its unit. */
const unbroken = (text: string): string => text.replace(/(\d) (?=\S)/g, '$1\u00a0');

function Against(props: {
  readonly sheet: SetupSheet;
  readonly chosen: string;
  readonly onChosen: (chosen: string) => void;
}) {
  const { sheet, chosen, onChosen } = props;
  const day = chosen.startsWith(DAY);
  const known = day || sheet.sessions.some(({ fact }) => fact === chosen) ? chosen : '';
  return (
    <section class="no-print" aria-label={setupWords.heldAgainst}>
      <label for="setup-against">{setupWords.holdItAgainst}</label>
      <select
        id="setup-against"
        class="field"
        value={day ? DAY : known}
        onChange={e => {
          const next = e.currentTarget.value;
          onChosen(next === DAY ? `${DAY}${dayField(new Date())}` : next);
        }}
      >
        <option value="">{setupWords.theBaseline}</option>
        <option value={DAY}>{setupWords.aDay}</option>
        {sheet.sessions.toReversed().map(({ fact, label, at }) => (
          <option key={fact} value={fact}>
            {label}, {moment(at)}
          </option>
        ))}
      </select>
      {day && (
        <>
          <label for="setup-day">{setupWords.asItStoodAtEnd}</label>
          <input
            id="setup-day"
            type="date"
            max={dayField(new Date())}
            value={chosen.slice(DAY.length)}
            onChange={e => onChosen(`${DAY}${e.currentTarget.value}`)}
          />
        </>
      )}
    </section>
  );
}

function Differences({ sheet: { against, differences, settings } }: { readonly sheet: SetupSheet }) {
  if (against === null) return settings.length === 0 ? null : <p class="note">{setupWords.noSetUpWasWritten}</p>;
  return (
    <section class="group" aria-labelledby="setup-changed">
      <h2 id="setup-changed">
        {setupWords.changed} <span>{differences.length}</span>
      </h2>
      <p class="soft">{setupWords.against(named(against))}</p>
      {differences.length === 0 && <p class="note">{setupWords.nothingDiffers}</p>}
      <ul class="rows changes">
        {differences.map(({ name, part, was, now, by }) => (
          <li key={name}>
            <div>
              <span>{name}</span>
              {part !== null && <small class="soft"> {part}</small>}
              <p>
                {unbroken(own(was ?? setupWords.notWrittenDown))} →{' '}
                <b>{unbroken(own(now ?? setupWords.notWrittenDown))}</b>
              </p>
            </div>
            <span class="side">{by === null ? '' : unbroken(own(by).replace('-', '−'))}</span>
          </li>
        ))}
      </ul>
    </section>
  );
}

const named = ({ label, at }: Moment): string => `${label}, ${moment(at)}`;
const moment = (at: string): string => `${dateOf(at)}, ${timeOf(at)}`;
