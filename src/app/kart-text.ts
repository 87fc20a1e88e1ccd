/** The text of a kart file with one thing changed, and every other line and comment as it was. */
import { parseDocument } from 'yaml';

export type SecondOf = {
  readonly part: string;
  readonly joint: string;
  readonly second: string;
  readonly accept: string; // what its check accepts from now on
};

/** Names the second retention of a joint, over whatever template and kinds say. The text must have been read before. */
export function withSecond(text: string, { part, joint, second, accept }: SecondOf): string {
  const file = parseDocument(text);
  const at = ['parts', part, 'joints', joint];
  file.setIn([...at, 'second'], second);
  file.setIn([...at, 'check', 'accept'], accept);
  return file.toString({ lineWidth: 0 });
}
