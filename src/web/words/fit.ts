/** What the sheet Fit says. */
export const fitWords = {
  releaseSheet: 'Release sheet',
  isItFitToRun: 'Is it fit to run?',
  toSignature: 'To the signature',
  weakLinksWhatWouldHurt: 'Weak links: what would hurt us',
  againstRunning: 'Against running',
  notKnown: 'Not known',
  openBelowSafety: 'Open, below safety',
  makersManualRules: (open: number) =>
    `${open === 0 ? 'Nothing stands open in the record.' : `Who signs has looked at the kart and has read the ${open} entries below that stand open.`} The maker's manual, the rules of the class, the scrutineer and local law win over anything printed here.`,
  signedInRecord: (by: { signer: string; verdict: string; on: string; statement: string }) =>
    `Signed in the record by ${by.signer} as ${by.verdict}, ${by.on}: ${by.statement}`,
  signatureOfPerson: 'Signature of the person who decides',
  dateAndTime: 'Date and time',
  sign: 'Sign',
  openListed: (open: number) => (open === 0 ? 'nothing open' : `${open} open, listed with the signature`),
  youSignForWhatYou:
    "You sign for what you have seen. What stands open here is kept with your name. The maker's manual, the class rules and the scrutineer win.",
  whoSigns: 'Who signs',
  whatYouStateIfMore: 'What you state, if more than what is shown',
  signAllSame: 'Sign all the same, with what stands open',
  signedAndInRecord: 'Signed and in the record.',
  writing: 'Writing …',
  nameWhatIsOpenFirst: (count: number, count2: number) => `Name what is open first: ${count} of ${count2}`,
  printReleaseSheet: 'Print the release sheet',
  signedBefore: 'Signed before',
  stoodOpen: (count: number) => `${count} stood open`,
} as const;
