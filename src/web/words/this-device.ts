/** What the sheet of this device says. */
export const deviceWords = {
  today: 'Today',
  thisDeviceAndServer: 'This device and the server',
  now: 'Now',
  factsToSend: 'Facts to send',
  serverLastMet: 'Server last met',
  neverYet: 'never yet',
  factsOnThisDevice: 'Facts on this device',
  clockOfThisDevice: (span: string, ahead: number) =>
    `The clock of this device is ${span} ${ahead > 0 ? 'ahead of' : 'behind'} the server's. Set the one that is wrong: facts are written with the time of their device, and what lapses by days is reckoned from it.`,
  meetServerNow: 'Meet the server now',
  sendThisBookToServer: 'Send this book to the server',
  beginEmptyBookHere: 'Begin an empty book here',
  pageItself: 'The page itself',
  whileItIsOpen:
    'While it is open it works without the server; to load it again the server is needed. A browser keeps a page only over HTTPS, or on the machine that serves it.',
  itIsKept: 'It is kept on this device and opens without the server.',
  showNewVersion: 'Show the new version',
  thisBrowserKeeps:
    'This browser keeps nothing: what you write lives until the page is closed, unless it was sent before. In a private window that is so; else allow the page to keep data, and load it again.',
  serverHasEverything: 'The server has everything that is on this device, and this device everything the server has.',
  serverAtThisAddress:
    'The server at this address keeps another book: the two share no fact, so they are kept apart. Load the page again to see the other one; this one stays here. To put both into one, import an export.',
  serverHeldThisBook:
    'The server held this book and holds none now. If it lost it, send it from here. If it is meant to begin anew, begin anew here too: this book stays on the device, and comes back with its server.',
  putOut:
    'The server does not let this device in any more. Everything that was written here stays here and can be exported; let in again with a code, it sends what waits.',
  letInAgain: 'Let this device in again',
  serverAnswersAndDoes: 'The server answers and does not take everything. It is kept here; see why below.',
  whatYouWriteIsKept:
    'What you write is kept on this device and goes to the server by itself when it is in reach. Go on working.',
  whatYouWriteIsKeptOn: 'What you write is kept on this device first, and is on its way to the server.',
  whatBrowserKeeps: 'What the browser keeps',
  mb: (bytes: string) => `${bytes} MB`,
  browserHasSaid: 'The browser has said that it keeps this book until somebody clears it.',
  browserMayClear:
    'The browser may clear this book when room is short or the page is not used for weeks. What was sent is on the server; of the rest take an export.',
  askBrowserToKeep: 'Ask the browser to keep it',
  exportBook: 'Export the book',
} as const;
