import { judgeTyped } from '../../app/index.ts';
import type { Item, Kart } from '../../kart/index.ts';

export type JudgedProps = {
  readonly kart: Kart;
  readonly item: Item;
  /** What was typed, with its unit. */
  readonly text: string;
  readonly instrument: string;
};

/** What a reading says while it is typed; nothing while it is none yet. */
export function Judged({ kart, item, text, instrument }: JudgedProps) {
  const judged = judgeTyped(kart, item, { text, ...(instrument !== '' && { instrument }) });
  if (judged === undefined) return null;
  return (
    <>
      {judged.say.map(line => (
        <p key={line} class="note">
          {line}
        </p>
      ))}
      {judged.move !== null && (
        <p class="note">
          <b>{judged.move}</b>
        </p>
      )}
      {judged.notes.map(line => (
        <p key={line} class="soft">
          {line}
        </p>
      ))}
    </>
  );
}
