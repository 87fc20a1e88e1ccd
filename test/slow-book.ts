/** A book that takes what is said, or asks again, when it is let. For views that are told something in between. */
import type { Session } from '../src/web/session.ts';
import type { Draft, Written } from '../src/web/written.ts';
import { settled } from './dom.ts';

export function slowBook() {
  const said: { readonly drafts: readonly Draft[]; readonly sure: boolean }[] = [];
  const ids: (string | undefined)[] = [];
  let answer: (written: Written) => void = () => undefined;
  let recorded = (): void => undefined;
  const session = {
    view: () => ({ writing: false }),
    write(drafts, { sure = false, id, recorded: call = () => undefined } = {}) {
      said.push({ drafts, sure });
      ids.push(id);
      recorded = call;
      return new Promise<Written>(done => (answer = done));
    },
  } as Partial<Session> as Session;
  return {
    session,
    said,
    /** Of each press, in step with what was said. */
    ids,
    async asks() {
      answer({ kind: 'refused', asksAgain: true, problems: [FAR] });
      await settled();
    },
    /** It has it; the page is not worked out again yet. */
    takes(): Promise<void> {
      recorded();
      return settled();
    },
    caughtUp(written: Written = { kind: 'written', facts: [] }): Promise<void> {
      answer(written);
      return settled();
    },
  };
}

const FAR = { code: 'far outside' as const, where: 'fact', message: 'Far outside.', remedy: 'Look again.' };
