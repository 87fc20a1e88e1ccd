import { render } from 'preact';
import { App } from './app.tsx';
import { keepIn } from './place.ts';
import { keptCrew } from './plan/crew.ts';
import { searchInWorker } from './plan/search.ts';
import { httpServer } from './server.ts';
import { createSession } from './session.ts';

/** A browser may forbid even to ask for its storage. */
function storage(): Storage | undefined {
  try {
    return window.localStorage;
  } catch {
    return undefined;
  }
}

const keep = keepIn(storage());
const session = createSession(httpServer, {
  who: () => keep.get('name'),
  crewOf: kart => keptCrew(keep, kart),
  search: searchInWorker,
});
const page = document.getElementById('page');
if (page === null) throw new Error('main: index.html must hold an element with id "page", got none');
page.replaceChildren();
render(<App session={session} keep={keep} />, page);
void session.open(keep.get('kart'));
