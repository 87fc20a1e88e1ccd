/** What is said to a device that asks to come in, and of those that are in. */
export const admissionWords = {
  letThisDevice: 'Let this device in',
  bookIsOnAnotherMachine: () => (
    <>
      The book is on another machine. There, under Record, choose <i>Devices</i>, or type{' '}
      <code>kartwright devices pair</code>. It shows a code that counts for ten minutes.
    </>
  ),
  theCode: 'The code',
  abcdEfgh: 'ABCD-EFGH',
  whatToCallThisDevice: 'What to call this device',
  phoneOfDriver: 'Phone of the driver',
  asking: 'Asking …',
  let: 'Let it in',
  backToBook: 'Back to the book on this device',
  whatIsWritten: 'What is written on this device carries its name in the book from then on.',
  addressAndCode: 'The address and the code, for a camera',
  wholeRecord: 'the whole record',
  runningAndWhatWasFound: 'running, and what was found',
  readsAndSigns: 'reads and signs',
  allOfItAndOther: 'all of it, and other devices',
  devices: 'Devices',
  onMachineThatKeepsBook:
    'On the machine that keeps the book no login is needed. Any other device is let in by a code, once, and writes under a name of its own.',
  letIn: 'Let in',
  noneYet: 'None yet.',
  putOut: 'Put out',
  sinceWhatItWroteStays: (revoked: string) => `since ${revoked}; what it wrote stays in the book`,
  onlyThisMachineReaches: () => (
    <>
      Only this machine reaches this page now. Stop the program and start it with{' '}
      <code>kartwright serve --lan --https</code>, then phones on the same network can be let in.
    </>
  ),
  oneMore: 'One more',
  as: 'As',
  anotherCode: 'Another code',
  showCode: 'Show a code',
  onDeviceOnSameNetwork: 'On the device, on the same network, open',
  andType: 'and type',
  deviceWarnsFirst: ' The device warns first: the terminal says how it learns to trust this machine.',
  itLetsInOneWithin: (role: string, text: string) =>
    `It lets in one ${role} within ten minutes. A camera reads both from the square.${text}`,
  itIsInLookAgain: 'It is in: look again',
  thisOne: ' (this one)',
  team: (team: string) => ` · team ${team}`,
  inBook: (chains: string) => `; in the book as ${chains}`,
  letInLastHere: (paired: string, seen: string, chains: string) => `let in ${paired}, last here ${seen}${chains}`,
  role: (name: string) => `Role of ${name}`,
  yesOut: 'Yes, out',
  no: 'No',
  forgetPerson: 'Take a person out',
  forgetIsForGood:
    'Their name goes from every entry, their photos and logs with it. What was done to the kart stays. It cannot be undone, and travels to every device that meets this book.',
  forgetWho: 'Whom, as the name stands in the book',
  forgetWords: 'their notes and remarks too',
  forgetTake: 'Take what they wrote along first, as files',
  forgetLook: 'Show what would go',
  forgetGoes: (theirs: number, naming: number, files: number) =>
    `Written or signed by them: ${theirs}. Others that name them: ${naming}. Photos and logs: ${files}.`,
  forgetAs: (as: string) => `In the place of the name stands "${as}" or a black bar.`,
  forgetLeft: (where: string) => `It still stands in ${where}: the kart would not be the same without it.`,
  forgetDo: 'Take it out, for good',
  forgetDone: 'It is out. Backups and exports of before still hold it: kartwright forget says which.',
  putThisOut: (name: string) => `Put ${name} out`,
} as const;
