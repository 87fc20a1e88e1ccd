/** Where the person is, in the address of the page: a browser takes its time to change it, so it is written once the place stands on the screen. */
export type Address = { say(hash: string): void };

type Bar = { readonly here: () => string; readonly put: (hash: string) => void };

/** @param later once what is asked for by now is painted; returns the way to stop it */
export function createAddress({ here, put }: Bar, later: (work: () => void) => () => void): Address {
  let stop = (): void => undefined;
  return {
    say(hash) {
      stop();
      const before = here();
      if (before === hash) return;
      stop = later(() => {
        if (here() === before) put(hash); // else a quick tap has gone elsewhere meanwhile
      });
    },
  };
}
