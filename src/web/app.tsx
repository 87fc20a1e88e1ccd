import { useEffect, useState } from 'preact/hooks';
import type { Versions } from './book/versions.ts';
import { useChanges } from './changes.ts';
import { Glyph } from './glyph.tsx';
import { createAway } from './interruption/away.ts';
import { Still } from './later.tsx';
import { Refused } from './parts.tsx';
import { hashOf, type Keep, keepOf, type Place, placeFrom, SHEETS, type Sheet } from './place.ts';
import { onSlash } from './search/slash.ts';
import type { Session } from './session.ts';
import {
  BuildPage,
  DimensionedPage,
  FilePage,
  FirstRunPage,
  FitPage,
  JointsPage,
  KartPage,
  LabelsPage,
  PartPage,
  RecordPage,
  SearchPage,
  TypeInPage,
} from './views/beside.tsx';
import { DeviceSheet } from './views/device.tsx';
import { Devices } from './views/devices.tsx';
import { Laps } from './views/laps.tsx';
import { Leave } from './views/leave.tsx';
import { Lives } from './views/lives.tsx';
import { Numbers } from './views/numbers.tsx';
import { Setup } from './views/setup.tsx';
import { Spares } from './views/spares.tsx';
import { SyncWord } from './views/sync-word.tsx';
import { Today } from './views/today.tsx';
import { Track } from './views/track.tsx';
import { Weak } from './views/weak.tsx';
import { Who } from './views/who.tsx';
import { Work } from './views/work.tsx';
import { beginFind, WRITING } from './views/writing.ts';
import { Whole } from './whole.tsx';
import { pageWords } from './words/page.ts';

const NAMES: Readonly<Record<Sheet, string>> = {
  today: pageWords.today,
  work: pageWords.work,
  kart: pageWords.kart,
  track: pageWords.track,
  record: pageWords.record,
  fit: pageWords.fit,
};

/** The whole page: title block, one sheet, the way to the others. */
export function App(props: { readonly session: Session; readonly keep: Keep; readonly versions: Versions }) {
  const { session, keep, versions } = props;
  const [place, setPlace] = useState<Place>(() => placeFrom(location.hash || keep.get('place')));
  const [who, setWho] = useState(keep.get('name'));
  const [naming, setNaming] = useState(false);

  const [away] = useState(() => createAway(document, keep));

  useChanges(session, versions);
  useEffect(() => {
    // Another tab of this device has said who is at it: what is written here is written under that name too. One that slept
    // meanwhile hears of it when it is shown again.
    const follow = (): void => setWho(keep.get('name'));
    const heard = ['storage', 'pageshow', 'focus'];
    for (const one of heard) window.addEventListener(one, follow);
    return () => {
      for (const one of heard) window.removeEventListener(one, follow);
    };
  }, [keep]);
  /**
   * Goes to a place: shown, kept and in the address in one go. An address written later, after the page is drawn, would
   * overwrite the one that a second quick tap has set meanwhile, and a tap on the one that still stands there would do nothing.
   */
  const move = (next: Place): void => {
    const hash = hashOf(next);
    keep.set('place', hash);
    if (next.sheet === 'work') keep.set('work place', hash);
    if (location.hash !== hash) history.replaceState(null, '', hash);
    setPlace(next);
  };
  useEffect(() => {
    const follow = (): void => {
      const next = placeFrom(location.hash);
      const kept = placeFrom(keep.get('work place'));
      move(next.sheet === 'work' && next.step === undefined && kept.step !== undefined ? kept : next);
    };
    move(place);
    const slash = onSlash(() => move({ sheet: 'search' }));
    window.addEventListener('hashchange', follow);
    window.addEventListener('keydown', slash);
    return () => {
      window.removeEventListener('hashchange', follow);
      window.removeEventListener('keydown', slash);
    };
  }, [keep]);

  const view = session.view();
  const { karts, isRead, snapshot, sync, trouble } = view;
  /** The work sheet goes on to a step; a person who has gone elsewhere meanwhile stays there, and finds it on coming back. */
  const go = (step: string | undefined): void => {
    const next: Place = step === undefined ? { sheet: 'work' } : { sheet: 'work', step };
    if (placeFrom(location.hash).sheet === 'work') move(next);
    else keep.set('work place', hashOf(next));
  };

  const openKart = (name: string): Promise<void> => {
    keep.set('kart', name);
    keep.set('work place', '');
    return session.open(name);
  };
  const begins =
    place.sheet === 'start' ||
    (isRead && karts.length === 0 && trouble.length === 0 && ['all sent', 'to send', 'no server'].includes(sync.is));

  // How it stands with the server changes often, and is said above the sheet.
  const isOfServer = place.sheet === 'device' || begins;
  const { writing, crew, searching, changed, stood, picked } = view;
  const drawn = [
    place,
    who,
    snapshot,
    karts,
    trouble,
    writing,
    crew,
    searching,
    changed,
    stood,
    picked,
    begins,
    isOfServer && view,
    versions.state(),
  ];

  return (
    <>
      <button type="button" class="skip" onClick={() => document.getElementById('sheet')?.focus()}>
        {pageWords.toSheet}
      </button>
      <div class="frame">
        <header class="title-block">
          <div>
            <small>{snapshot?.kart.invented ? pageWords.kartInvented : pageWords.kart}</small>
            {karts.length > 1 ? (
              <select
                aria-label={pageWords.kart}
                value={view.picked ?? snapshot?.kart.name ?? ''}
                onChange={e => void openKart(e.currentTarget.value)}
              >
                {karts.map(k => (
                  <option key={k.name} value={k.name}>
                    {k.name}
                  </option>
                ))}
              </select>
            ) : (
              <b>{snapshot?.kart.name ?? karts[0]?.name ?? '–'}</b>
            )}
          </div>
          <div>
            <small>{pageWords.book}</small>
            <a href={hashOf({ sheet: 'device' })}>
              <SyncWord view={view} />
            </a>
          </div>
          <div>
            <small>{pageWords.by}</small>
            <button
              type="button"
              onClick={() => setNaming(true)}
              aria-label={pageWords.yourNameChange(who || pageWords.notGiven)}
            >
              {who || pageWords.yourName}
            </button>
          </div>
          <a class="to-search" href={hashOf({ sheet: 'search' })} aria-label={pageWords.search}>
            <Glyph sign="search" />
            <span>{pageWords.search}</span>
          </a>
        </header>
        <nav class="sheets" aria-label={pageWords.sheets}>
          <ul>
            {SHEETS.map(s => (
              <li key={s}>
                <a href={hashOf({ sheet: s })} aria-current={s === place.sheet ? 'page' : undefined}>
                  {NAMES[s]}
                </a>
              </li>
            ))}
          </ul>
        </nav>
        <main id="sheet" tabIndex={-1}>
          <Refused problems={trouble} />
          {/* Never under an open step. */}
          {versions.state() === 'waiting' && place.sheet !== 'work' && (
            <p class="note no-print">
              {pageWords.newVersionOfThisPage}{' '}
              <button type="button" class="button" onClick={() => versions.takeOver()}>
                {pageWords.show}
              </button>
            </p>
          )}
          {sync.setBack !== undefined && place.sheet !== 'work' && (
            <p class="note need no-print" role="status">
              {pageWords.serverWasSetBack(sync.setBack)}{' '}
              <button type="button" class="button" onClick={() => void session.book.seenSetBack()}>
                {pageWords.iHaveReadIt}
              </button>
            </p>
          )}
          <Still of={drawn}>
            {place.sheet === 'device' ? (
              <DeviceSheet session={session} keep={keep} versions={versions} />
            ) : begins && who !== '' ? (
              <FirstRunPage
                session={session}
                keep={keep}
                who={who}
                here={() => move({ sheet: 'start' })}
                openKart={openKart}
              />
            ) : snapshot === undefined ||
              (picked !== undefined && picked !== snapshot.kart.name) ||
              (stood !== undefined && isVerdictOfBefore(place.sheet, stood)) ? (
              trouble.length === 0 && <p class="loading">{pageWords.readingBook}</p>
            ) : place.sheet === 'today' ? (
              <Today
                snapshot={snapshot}
                calendar={session.ask.calendar}
                writeDown={kind => {
                  keep.set(WRITING, kind);
                  move({ sheet: 'record' });
                }}
              />
            ) : place.sheet === 'work' ? (
              <Work key={snapshot.kart.name} {...{ snapshot, session, keep, away, who, go }} step={place.step} />
            ) : place.sheet === 'kart' ? (
              <KartPage snapshot={snapshot} here={stepPart(keep, snapshot.plan.steps)} />
            ) : place.sheet === 'numbers' ? (
              <Numbers kart={snapshot.kart} keep={keep} subject={place.number} />
            ) : place.sheet === 'setup' ? (
              <Whole session={session} snapshot={snapshot}>
                {whole => (
                  <Setup
                    snapshot={whole}
                    keep={keep}
                    change={() => {
                      keep.set(WRITING, 'set-up');
                      move({ sheet: 'record' });
                    }}
                  />
                )}
              </Whole>
            ) : place.sheet === 'laps' ? (
              <Whole session={session} snapshot={snapshot}>
                {whole => (
                  <Laps key={snapshot.kart.name} snapshot={whole} session={session} keep={keep} page={place.about} />
                )}
              </Whole>
            ) : place.sheet === 'track' ? (
              <Whole session={session} snapshot={snapshot}>
                {whole => <Track key={snapshot.kart.name} snapshot={whole} session={session} keep={keep} />}
              </Whole>
            ) : place.sheet === 'weak' ? (
              <Weak
                key={snapshot.kart.name}
                snapshot={snapshot}
                session={session}
                keep={keep}
                who={who}
                about={place.about}
              />
            ) : place.sheet === 'lives' ? (
              <Whole session={session} snapshot={snapshot}>
                {whole => <Lives key={snapshot.kart.name} snapshot={whole} session={session} about={place.about} />}
              </Whole>
            ) : place.sheet === 'spares' ? (
              <Spares key={snapshot.kart.name} snapshot={snapshot} session={session} keep={keep} />
            ) : place.sheet === 'devices' ? (
              <Devices who={who ?? ''} />
            ) : place.sheet === 'part' || place.sheet === 'box' ? (
              <Whole session={session} snapshot={snapshot}>
                {whole => (
                  <PartPage
                    key={place.about ?? ''}
                    snapshot={whole}
                    karts={karts}
                    what={place.sheet === 'box' ? 'box' : 'part'}
                    about={place.about ?? ''}
                    openKart={openKart}
                    find={(part, grade) => beginFind(keep, snapshot.kart.name, part, grade)}
                  />
                )}
              </Whole>
            ) : place.sheet === 'joints' ? (
              <JointsPage snapshot={snapshot} about={place.about} go={move} />
            ) : place.sheet === 'drawing' ? (
              <DimensionedPage snapshot={snapshot} about={place.about ?? ''} />
            ) : place.sheet === 'type-in' ? (
              <Whole session={session} snapshot={snapshot}>
                {whole => (
                  <TypeInPage key={snapshot.kart.name} snapshot={whole} session={session} keep={keep} who={who} />
                )}
              </Whole>
            ) : place.sheet === 'search' ? (
              <Whole session={session} snapshot={snapshot}>
                {whole => <SearchPage snapshot={whole} keep={keep} />}
              </Whole>
            ) : place.sheet === 'labels' ? (
              <Whole session={session} snapshot={snapshot}>
                {whole => <LabelsPage key={snapshot.kart.name} snapshot={whole} keep={keep} />}
              </Whole>
            ) : place.sheet === 'build' ? (
              <Whole session={session} snapshot={snapshot}>
                {whole => (
                  <BuildPage key={snapshot.kart.name} snapshot={whole} session={session} keep={keep} who={who} />
                )}
              </Whole>
            ) : place.sheet === 'file' ? (
              <Whole session={session} snapshot={snapshot}>
                {whole => (
                  <FilePage key={snapshot.kart.name} snapshot={whole} session={session} keep={keep} who={who} />
                )}
              </Whole>
            ) : place.sheet === 'record' ? (
              <Whole session={session} snapshot={snapshot}>
                {whole => <RecordPage key={snapshot.kart.name} snapshot={whole} session={session} keep={keep} />}
              </Whole>
            ) : (
              <FitPage
                key={snapshot.kart.name}
                snapshot={snapshot}
                session={session}
                keep={keepOf(keep, snapshot.kart.name)}
                who={who}
              />
            )}
          </Still>
        </main>
        <Leave session={session} />
      </div>
      {(who === '' || naming) && (
        <Who
          name={who}
          onNamed={name => {
            keep.set('name', name);
            setWho(name);
            setNaming(false);
          }}
        />
      )}
    </>
  );
}

/** Whether the kart is fit is not shown as it stood before: days make items due by themselves. */
const isVerdictOfBefore = (sheet: Place['sheet'], stood: string): boolean =>
  (sheet === 'fit' || sheet === 'today') && !(Date.now() - Date.parse(stood) < 60_000);

/** The part of the step that is being worked on. */
function stepPart(
  keep: Keep,
  steps: readonly { readonly key: string; readonly part: string | null }[],
): string | undefined {
  const { step } = placeFrom(keep.get('work place'));
  return steps.find(s => s.key === step)?.part ?? undefined;
}
