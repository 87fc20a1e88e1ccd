/** The text of a kart file with one thing changed, and every other line and comment as it was. */
import { type Document, isMap, isScalar, parseDocument } from 'yaml';

export type SecondOf = {
  readonly part: string;
  readonly joint: string;
  readonly second: string;
  readonly accept: string; // what its check accepts from now on
};

/** One tap on the sheet where a kart is built. */
export type KartEdit =
  /** Taken away. `below`: the template has it, so the file must say that this kart does not. */
  | { readonly is: 'part out'; readonly part: string; readonly below: boolean }
  | { readonly is: 'part in'; readonly part: string }
  | {
      readonly is: 'new part';
      readonly part: string;
      readonly kind: string;
      readonly system: string;
      readonly behind: readonly string[];
    }
  | ({ readonly is: 'second in' } & SecondOf)
  | { readonly is: 'second out'; readonly part: string; readonly joint: string }
  /** As the template or the kind has it again. */
  | { readonly is: 'second back'; readonly part: string; readonly joint: string }
  | { readonly is: 'dimension'; readonly name: string; readonly value: string };

/** What a new file says of a figure that nobody has measured. */
const MEASURE = 'measure yours';

/** The text must be YAML without an error; whether the kart it then says can be is for the reader to tell. */
export function edited(text: string, edit: KartEdit): string {
  const file = parseDocument(text);
  if (edit.is === 'part out') takeOut(file, ['parts', edit.part], edit.below);
  else if (edit.is === 'part in') deleteIn(file, ['parts', edit.part]);
  else if (edit.is === 'new part') {
    const { part, kind, system, behind } = edit;
    set(file, ['parts', part], file.createNode({ kind, system, ...(behind.length > 0 && { behind }) }));
  } else if (edit.is === 'second in') setSecond(file, edit);
  else if (edit.is === 'second out') set(file, ['parts', edit.part, 'joints', edit.joint, 'second'], 'none');
  else if (edit.is === 'second back') deleteIn(file, ['parts', edit.part, 'joints', edit.joint, 'second']);
  else {
    set(file, ['dimensions', edit.name], edit.value);
    measured(file, edit.name);
  }
  const written = file.toString({ lineWidth: 0 });
  return text.includes('\r\n') ? written.replace(/\r?\n/g, '\r\n') : written;
}

/** Names the second retention of a joint, over whatever template and kinds say. The text must have been read before. */
export const withSecond = (text: string, second: SecondOf): string => edited(text, { is: 'second in', ...second });

function setSecond(file: Document, { part, joint, second, accept }: SecondOf): void {
  const at = ['parts', part, 'joints', joint];
  set(file, [...at, 'second'], second);
  set(file, [...at, 'check', 'accept'], accept);
}

function takeOut(file: Document, path: readonly string[], below: boolean): void {
  if (below) set(file, path, 'none');
  else deleteIn(file, path);
}

/** Makes what is missing on the way; a key without a value, or with `none`, becomes the map that is needed. */
function set(file: Document, path: readonly string[], value: unknown): void {
  for (let i = 1; i < path.length; i++) {
    const above = path.slice(0, i);
    if (file.hasIn(above) && !isMap(file.getIn(above, true))) file.setIn(above, file.createNode({}));
  }
  file.setIn(path, value);
}

/** Takes away a key, and every map that held nothing else: `parts:` with nothing beneath says nothing. */
function deleteIn(file: Document, path: readonly string[]): void {
  if (!file.hasIn(path)) return;
  file.deleteIn(path);
  const above = path.slice(0, -1);
  const held = above.length === 0 ? undefined : file.getIn(above, true);
  if (isMap(held) && held.items.length === 0 && !held.comment && !held.commentBefore) deleteIn(file, above);
}

function measured(file: Document, name: string): void {
  const value = file.getIn(['dimensions', name], true);
  if (isScalar(value) && value.comment?.trim() === MEASURE) value.comment = null;
}
