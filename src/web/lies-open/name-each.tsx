import type { OpenOnKart } from '../../app/index.ts';
import { liesOpenWords } from '../words/lies-open.ts';

/** What whoever signs has to name, one by one, before the signature can be given. */
export const toName = ({ off, halfDone, tools }: OpenOnKart): readonly string[] => [
  ...[...off, ...halfDone].map(({ text }) => text),
  ...(tools.length === 0 ? [] : [liesOpenWords.notCountedSinceThey(tools.join(', '))]),
];

/** A box for each: ticking it is naming it. */
export function NameEach(props: {
  readonly all: readonly string[];
  readonly named: readonly string[];
  readonly onNamed: (named: readonly string[]) => void;
}) {
  const { all, named, onNamed } = props;
  if (all.length === 0) return null;
  return (
    <fieldset class="name-each">
      <legend>{liesOpenWords.openOnKartName}</legend>
      {all.map(one => (
        <label class="tick-box" key={one}>
          <input
            type="checkbox"
            checked={named.includes(one)}
            onChange={e => onNamed(e.currentTarget.checked ? [...named, one] : named.filter(other => other !== one))}
          />
          {one}
        </label>
      ))}
    </fieldset>
  );
}
