/** What is wrong with a kart file, each at its line with what to do; pressing one goes there. */

import { sentence } from '../../app/index.ts';
import type { Problem } from '../../kart/index.ts';
import { kartFileWords } from '../words/kart-file.ts';

const FEW = 30;

export function Errors(props: { readonly problems: readonly Problem[]; readonly goTo?: (problem: Problem) => void }) {
  const { problems, goTo } = props;
  return (
    <ol class="errors">
      {problems.slice(0, FEW).map(one => {
        const where =
          one.file === undefined ? kartFileWords.line(one.line, one.column) : kartFileWords.inLibrary(one.file);
        return (
          <li key={`${one.line} ${one.column} ${one.path} ${one.expected}`}>
            {goTo && one.file === undefined ? (
              <button type="button" class="button plain" onClick={() => goTo(one)}>
                {where}
              </button>
            ) : (
              <b>{where}</b>
            )}
            <p>
              {one.path !== '' && <span class="soft">{one.path}: </span>}
              <b>{kartFileWords.expected(one.expected, one.got)}</b> {sentence(one.remedy)}
            </p>
          </li>
        );
      })}
      {problems.length > FEW && <li>{kartFileWords.moreErrors(problems.length - FEW)}</li>}
    </ol>
  );
}
