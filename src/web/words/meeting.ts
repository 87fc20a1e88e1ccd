/** What this device says of meeting the server; said beside the page, which has its own words. */
export const meetingWords = {
  serverAnswered: (status: number, statusText: string) => `The server answered ${status} ${statusText}.`,
  whatWasWrittenIsKept: 'What was written is kept on this device. Look at the terminal the server runs in.',
  twoBooksCould: (error: string) => `The two books could not be brought together: ${error}.`,
  whatWasWrittenIsKeptOn: (toDo = 'load the page again') =>
    `What was written is kept on this device. To do: ${toDo}; take an export if it stays so.`,
};
