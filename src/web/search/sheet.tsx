/** One field for everything: parts, joints, checks, steps, entries, events, sessions, numbers and pages. */
import './search.css';
import { useEffect, useMemo, useRef, useState } from 'preact/hooks';
import type { Keep } from '../place.ts';
import type { Snapshot } from '../session.ts';
import { searchWords } from '../words/search.ts';
import { type Found, find, prepared, type Sort } from './find.ts';
import { thingsOf } from './things.ts';

export type SearchProps = { readonly snapshot: Snapshot; readonly keep: Keep };

const SAYS: Readonly<Record<Sort, string>> = {
  page: searchWords.pages,
  step: searchWords.stepsOfPlan,
  part: searchWords.parts,
  joint: searchWords.joints,
  check: searchWords.whatIsChecked,
  number: searchWords.numbers,
  event: searchWords.events,
  session: searchWords.sessions,
  entry: searchWords.entriesOfRecord,
};

export function Search({ snapshot, keep }: SearchProps) {
  const [typed, setTyped] = useState(keep.get('search'));
  const things = useMemo(() => prepared(thingsOf(snapshot)), [snapshot]);
  const found = useMemo(() => find(things, typed), [things, typed]);
  const field = useRef<HTMLInputElement>(null);
  useEffect(() => field.current?.select(), []);
  const count = found.reduce((sum, { all }) => sum + all, 0);
  return (
    <>
      <h1>
        <label for="search" class="search-label">
          {searchWords.searchEverything}
        </label>
      </h1>
      <input
        id="search"
        ref={field}
        type="search"
        autocomplete="off"
        enterKeyHint="search"
        value={typed}
        onInput={e => {
          keep.set('search', e.currentTarget.value);
          setTyped(e.currentTarget.value);
        }}
      />
      <p class="soft search-count" role="status">
        {typed.trim() === '' ? searchWords.partsJointsChecksSteps : searchWords.nothingIsCalledSoTry(count)}
      </p>
      {found.map(group => (
        <Group key={group.sort} group={group} />
      ))}
    </>
  );
}

function Group({ group: { sort, all, first } }: { readonly group: Found }) {
  return (
    <section class="group">
      <h2>
        {SAYS[sort]} <span>{all > first.length ? searchWords.first(first.length, all) : all}</span>
      </h2>
      <ul class="found-rows">
        {first.map((thing, i) => (
          <li key={`${thing.hash}${i}`}>
            <a href={thing.hash}>
              <b>{thing.title}</b>
              <span class="soft">{thing.under}</span>
            </a>
          </li>
        ))}
      </ul>
    </section>
  );
}
