/** How a device leaves the server that let it in. */
export const leaveWords = {
  logOut: 'Log this device out',
  whatHappens:
    'The server takes nothing more from this device until it is let in again with a code. The book on it stays: clear the data of this site to remove that too.',
  yes: 'Yes, log out',
  no: 'Stay',
} as const;
