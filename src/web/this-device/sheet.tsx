/** This device and the server: what waits, what the browser will keep, and the whole book as a file. */
import { useEffect, useState } from 'preact/hooks';
import { askToKeep, type Room, roomNow } from '../book/room.ts';
import type { Versions } from '../book/versions.ts';
import { Glyph } from '../glyph.tsx';
import { Cell, Refused } from '../parts.tsx';
import { hashOf } from '../place.ts';
import type { Session, View } from '../session.ts';
import { SyncWord } from '../views/sync-word.tsx';
import { dateOf, spanOf, timeOf } from '../words.ts';

export type DeviceProps = { readonly session: Session; readonly versions: Versions };

export function DeviceSheet({ session, versions }: DeviceProps) {
  const view = session.view();
  const [room, setRoom] = useState<Room>();
  useEffect(() => {
    void roomNow(navigator.storage).then(setRoom);
  }, [view.sync]);
  const { sync, karts } = view;
  return (
    <>
      <p class="no-print">
        <a class="back" href={hashOf({ sheet: 'today' })}>
          Today
        </a>
      </p>
      <h1>This device and the server</h1>
      <div class="cells head-gap">
        <Cell label="Now">
          <SyncWord view={view} />
        </Cell>
        <Cell label="Facts to send">{String(sync.waiting)}</Cell>
        <Cell label="Server last met">{sync.met ? `${dateOf(sync.met)} ${timeOf(sync.met)}` : 'never yet'}</Cell>
        <Cell label="Facts on this device">{String(karts.reduce((sum, { facts }) => sum + facts, 0))}</Cell>
      </div>
      <p class="note" role="status">
        {sentenceOf(view)}
      </p>
      {sync.ahead !== undefined && (
        <p class="note need">
          <Glyph sign="caution" /> The clock of this device is {spanOf(Math.abs(sync.ahead) / 60_000)}{' '}
          {sync.ahead > 0 ? 'ahead of' : 'behind'} the server's. Set the one that is wrong: facts are written with the
          time of their device, and what lapses by days is reckoned from it.
        </p>
      )}
      <Refused problems={sync.problems} />
      <div class="answers">
        <button type="button" class="button main full" onClick={() => void session.book.meet()}>
          Meet the server now
        </button>
        <Export session={session} />
        {sync.is === 'empty server' && (
          <>
            <button type="button" class="button full" onClick={() => void session.book.giveAll()}>
              Send this book to the server
            </button>
            <button type="button" class="button full" onClick={() => session.book.beginAnew()}>
              Begin an empty book here
            </button>
          </>
        )}
      </div>
      <Keeping view={view} room={room} onAsk={() => void askToKeep(navigator.storage).then(setRoom)} />
      <section class="group" aria-labelledby="page-files">
        <h2 id="page-files">The page itself</h2>
        {versions.state() === 'none' ? (
          <p class="note need">
            <Glyph sign="caution" /> While it is open it works without the server; to load it again the server is
            needed. A browser keeps a page only over HTTPS, or on the machine that serves it.
          </p>
        ) : (
          <p class="note">
            <Glyph sign="done" /> It is kept on this device and opens without the server.
          </p>
        )}
        {versions.state() === 'waiting' && (
          <button type="button" class="button full" onClick={() => versions.takeOver()}>
            Show the new version
          </button>
        )}
      </section>
    </>
  );
}

function sentenceOf({ sync, kept }: View): string {
  if (!kept)
    return 'This browser keeps nothing: what you write lives until the page is closed, unless it was sent before. In a private window that is so; else allow the page to keep data, and load it again.';
  switch (sync.is) {
    case 'all sent':
      return 'The server has everything that is on this device, and this device everything the server has.';
    case 'other book':
      return 'The server at this address keeps another book: the two share no fact, so they are kept apart. Load the page again to see the other one; this one stays here. To put both into one, import an export.';
    case 'empty server':
      return 'The server held this book and holds none now. If it lost it, send it from here. If it is meant to begin anew, begin anew here too: this book stays on the device, and comes back with its server.';
    case 'stopped':
      return 'The server answers and does not take everything. It is kept here; see why below.';
    case 'no server':
      return 'What you write is kept on this device and goes to the server by itself when it is in reach. Go on working.';
    default:
      return 'What you write is kept on this device first, and is on its way to the server.';
  }
}

function Keeping(props: { readonly view: View; readonly room: Room | undefined; readonly onAsk: () => void }) {
  const { view, room, onAsk } = props;
  if (!view.kept || room === undefined) return null;
  return (
    <section class="group" aria-labelledby="keeping">
      <h2 id="keeping">
        What the browser keeps {room.bytes !== undefined && <span>{(room.bytes / 1e6).toFixed(1)} MB</span>}
      </h2>
      {room.persisted ? (
        <p class="note">
          <Glyph sign="done" /> The browser has said that it keeps this book until somebody clears it.
        </p>
      ) : (
        <>
          <p class="note need">
            <Glyph sign="caution" /> The browser may clear this book when room is short or the page is not used for
            weeks. What was sent is on the server; of the rest take an export.
          </p>
          <button type="button" class="button full" onClick={onAsk}>
            Ask the browser to keep it
          </button>
        </>
      )}
    </section>
  );
}

/** The file is made when it is pressed: a book of years is some megabytes. */
function Export({ session }: { readonly session: Session }) {
  const [url, setUrl] = useState<string>();
  useEffect(() => () => (url === undefined ? undefined : URL.revokeObjectURL(url)), [url]);
  const make = async (): Promise<void> => {
    const text = await session.book.export();
    setUrl(URL.createObjectURL(new Blob([text], { type: 'application/jsonl' })));
  };
  if (url !== undefined)
    return (
      <a class="button full" href={url} download="kartwright-book.jsonl">
        Save the file
      </a>
    );
  return (
    <button type="button" class="button full" onClick={() => void make()}>
      Export the book
    </button>
  );
}
