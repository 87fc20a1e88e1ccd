import type { Draft } from '../../src/book/index.ts';

/** The smallest fact there is. */
export function note(id: string, device = 'bench', text = 'dry'): Draft {
  const at = '2026-05-01T08:00:00.000Z';
  return { id, kart: '41', at, recorded: at, by: 'A. Sample', device, kind: 'note', text };
}
