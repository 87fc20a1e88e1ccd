import fc from 'fast-check';
import { expect, it } from 'vitest';
import { stringify } from 'yaml';
import { pack, unpack } from './pack.ts';
import { placeIn, readYaml, type Tree } from './source.ts';

const scalar = fc.oneof(fc.string(), fc.integer(), fc.boolean(), fc.constant(null));
const name = fc.stringMatching(/^[a-z][a-z ]{0,8}[a-z]$/).filter(key => !(key in Object.prototype));
const { tree } = fc.letrec(tie => ({
  tree: fc.dictionary(name, tie('value'), { maxKeys: 4 }),
  value: fc.oneof({ maxDepth: 4 }, scalar, fc.array(tie('value'), { maxLength: 3 }), tie('tree')),
}));

/** Every value with the place it was written at. */
function placed(value: unknown): unknown {
  if (typeof value !== 'object' || value === null) return value;
  return Object.entries(value).map(([key, one]) => [key, placeIn(value, key), placed(one)]);
}

it('gives back every value with its line, column and path, through JSON', () => {
  fc.assert(
    fc.property(tree, content => {
      const read = readYaml(stringify(content), 'kinds/any.yaml', () => {}) as Tree;
      const again = unpack(JSON.parse(JSON.stringify(pack(read))), 'kinds/any.yaml');
      expect(again).toEqual(read);
      expect(placed(again)).toEqual(placed(read));
    }),
  );
});
