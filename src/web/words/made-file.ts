/** What a file that is made for a person says. */
export const madeFileWords = {
  save: 'Save the file',
} as const;
