/** What is said where the server does not answer a device that asks whether it is let in: the page needs it before any sheet. */
export const strangerWords = {
  itAnswered: (status: number) => `it answered ${status}`,
  itDoesNotAnswer: 'it does not answer',
  expectedAnswerOfServer: (what: string) => `Expected an answer of the server, and ${what}.`,
  seeThatItRuns: 'See that it runs and that this device is on the same network, then try again.',
} as const;
