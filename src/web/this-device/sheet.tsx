/** This device and the server: what waits, what the browser will keep, and the whole book as a file. */
import { useEffect, useState } from 'preact/hooks';
import { askToKeep, type Room, roomNow } from '../book/room.ts';
import type { Versions } from '../book/versions.ts';
import { ChoiceForm } from '../choice/form.tsx';
import { Glyph } from '../glyph.tsx';
import { Cell, Refused } from '../parts.tsx';
import { hashOf, type Keep } from '../place.ts';
import type { Session } from '../session.ts';
import type { View } from '../view.ts';
import { MadeFile } from '../views/made-file.tsx';
import { SyncWord } from '../views/sync-word.tsx';
import { dateOf, spanOf, timeOf } from '../words/reads.ts';
import { deviceWords } from '../words/this-device.ts';

export type DeviceProps = { readonly session: Session; readonly keep: Keep; readonly versions: Versions };

export function DeviceSheet({ session, keep, versions }: DeviceProps) {
  const view = session.view();
  const [room, setRoom] = useState<Room>();
  useEffect(() => {
    void roomNow(navigator.storage).then(setRoom);
  }, [view.sync]);
  const { sync, karts, isRead } = view;
  const facts = karts.reduce((sum, { facts }) => sum + facts, 0);
  return (
    <>
      <p class="no-print">
        <a class="back" href={hashOf({ sheet: 'today' })}>
          {deviceWords.today}
        </a>
      </p>
      <h1>{deviceWords.thisDeviceAndServer}</h1>
      <div class="cells head-gap">
        <Cell label={deviceWords.now}>
          <SyncWord view={view} />
        </Cell>
        <Cell label={deviceWords.factsToSend}>{String(sync.waiting)}</Cell>
        <Cell label={deviceWords.serverLastMet}>
          {sync.met ? `${dateOf(sync.met)} ${timeOf(sync.met)}` : deviceWords.neverYet}
        </Cell>
        <Cell label={deviceWords.factsOnThisDevice}>{isRead || karts.length > 0 ? String(facts) : '–'}</Cell>
      </div>
      <p class="note" role="status">
        {sentenceOf(view)}
      </p>
      {sync.ahead !== undefined && (
        <p class="note need">
          <Glyph sign="caution" /> {deviceWords.clockOfThisDevice(spanOf(Math.abs(sync.ahead) / 60_000), sync.ahead)}
        </p>
      )}
      <Refused problems={sync.problems} />
      <div class="answers">
        <button type="button" class="button main full" onClick={() => void session.book.meet()}>
          {deviceWords.meetServerNow}
        </button>
        <MadeFile
          key={facts} // what was made before is of before
          ask={deviceWords.exportBook}
          file="kartwright-book.jsonl"
          type="application/jsonl"
          make={session.book.export}
        />
        {sync.is === 'put out' && (
          <button type="button" class="button full" onClick={() => session.book.letIn()}>
            {deviceWords.letInAgain}
          </button>
        )}
        {sync.is === 'empty server' && (
          <>
            <button type="button" class="button full" onClick={() => void session.book.giveAll()}>
              {deviceWords.sendThisBookToServer}
            </button>
            <button type="button" class="button full" onClick={() => session.book.beginAnew()}>
              {deviceWords.beginEmptyBookHere}
            </button>
          </>
        )}
      </div>
      <ChoiceForm keep={keep} />
      <Keeping view={view} room={room} onAsk={() => void askToKeep(navigator.storage).then(setRoom)} />
      <section class="group" aria-labelledby="page-files">
        <h2 id="page-files">{deviceWords.pageItself}</h2>
        {versions.state() === 'none' ? (
          <p class="note need">
            <Glyph sign="caution" /> {deviceWords.whileItIsOpen}
          </p>
        ) : (
          <p class="note">
            <Glyph sign="done" /> {deviceWords.itIsKept}
          </p>
        )}
        {versions.state() === 'waiting' && (
          <button type="button" class="button full" onClick={() => versions.takeOver()}>
            {deviceWords.showNewVersion}
          </button>
        )}
      </section>
    </>
  );
}

function sentenceOf({ sync, kept }: View): string {
  if (!kept) return deviceWords.thisBrowserKeeps;
  switch (sync.is) {
    case 'all sent':
      return deviceWords.serverHasEverything;
    case 'other book':
      return deviceWords.serverAtThisAddress;
    case 'empty server':
      return deviceWords.serverHeldThisBook;
    case 'put out':
      return deviceWords.putOut;
    case 'stopped':
      return deviceWords.serverAnswersAndDoes;
    case 'no server':
      return deviceWords.whatYouWriteIsKept;
    default:
      return deviceWords.whatYouWriteIsKeptOn;
  }
}

function Keeping(props: { readonly view: View; readonly room: Room | undefined; readonly onAsk: () => void }) {
  const { view, room, onAsk } = props;
  if (!view.kept || room === undefined) return null;
  return (
    <section class="group" aria-labelledby="keeping">
      <h2 id="keeping">
        {deviceWords.whatBrowserKeeps}{' '}
        {room.bytes !== undefined && <span>{deviceWords.mb((room.bytes / 1e6).toFixed(1))}</span>}
      </h2>
      {room.persisted ? (
        <p class="note">
          <Glyph sign="done" /> {deviceWords.browserHasSaid}
        </p>
      ) : (
        <>
          <p class="note need">
            <Glyph sign="caution" /> {deviceWords.browserMayClear}
          </p>
          <button type="button" class="button full" onClick={onAsk}>
            {deviceWords.askBrowserToKeep}
          </button>
        </>
      )}
    </section>
  );
}
