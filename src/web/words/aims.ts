/** What is said beside a size that is shown in another unit than it was written in. */
export const aimsWords = {
  givenAs: (given: string) => `given as ${given}`,
  typedAs: (shown: string, typed: string) => `${shown} (typed ${typed})`,
} as const;
