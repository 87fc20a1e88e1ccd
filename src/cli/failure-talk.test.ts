import { describe, expect, it } from 'vitest';
import { facts } from '../../test/random-kart.ts';
import { smallKart } from '../../test/small-kart.ts';
import { fold, type Payload, payload } from '../book/index.ts';
import type { Kart } from '../kart/index.ts';
import { talkOfFailure } from './failure-talk.ts';

const kart: Kart = {
  ...smallKart(),
  functions: {
    steer: { name: 'steer', severity: 1, needs: { part: 'hub' } },
    stop: { name: 'stop', severity: 1, needs: { part: 'hub' } },
  },
};
const history: Payload[] = [
  { kind: 'ran', minutes: 90, event: 'Round 1', session: 'Practice' },
  { kind: 'ran', minutes: 12, event: 'Round 1', session: 'Heat 1' },
];

/** The talk with someone who types these lines; the questions that were put. */
async function talk(lines: readonly string[], given: Record<string, unknown> = {}) {
  const book = facts(history);
  const asked: string[] = [];
  const ask = async (question: string): Promise<string> => {
    asked.push(question);
    const line = lines[asked.length - 1];
    if (line === undefined) throw new Error(`nothing more is typed, and it asks: ${question}`);
    return line;
  };
  const said = await talkOfFailure(ask, { kart, state: fold(book), facts: book }, given);
  return { said, asked };
}

describe('the talk after something failed', () => {
  it('goes from the part to what would have held it, and makes a fact of the answers', async () => {
    const { said } = await talk(
      ['hub', '1', 'nuts gone', 'Round 2', '', '7', '2 h', '2', 'y', 'rear left, hit', 'a split pin'],
      { kind: 'failed' },
    );
    expect(said).toEqual({
      kind: 'failed',
      part: 'hub',
      joint: 'hub/bolts',
      how: 'nuts gone',
      event: 'Round 2',
      session: 'Heat 1',
      lap: 7,
      afterMinutes: 120,
      lost: ['stop'],
      stopped: true,
      impact: { corner: 'rear left', severity: 'hit' },
      wouldHaveHeld: 'a split pin',
    });
    expect(payload.safeParse(said).success).toBe(true);
  });

  it('offers what the record knows, and takes an empty line for what nobody knows', async () => {
    const { said, asked } = await talk(['hub', '', 'broke', '', '', '', '', '', 'n', '', ''], { kind: 'failed' });
    expect(said).toEqual({ kind: 'failed', part: 'hub', how: 'broke', event: 'Round 1', session: 'Heat 1' });
    expect(asked.join('\n')).toMatch(/as on record, 1\.7 h/);
  });

  it('asks again where an answer cannot be read, with the nearest name of a part', async () => {
    const { said, asked } = await talk(
      ['hubb', 'hub', '9', '', '', 'broke', '', '', 'soon', '3', 'long', '1.5 h', '1 9', '1 2', '', 'left', '', ''],
      { kind: 'failed' },
    );
    expect(asked[1]).toContain('Did you mean "hub"?');
    expect(said).toMatchObject({ lap: 3, afterMinutes: 90, lost: ['steer', 'stop'] });
    expect(said).not.toHaveProperty('impact');
  });

  it('asks only for what was not given', async () => {
    const given = {
      kind: 'failed',
      part: 'frame',
      how: 'tube broken',
      event: 'R',
      session: 'S',
      lap: 2,
      afterMinutes: 5,
    };
    const { said, asked } = await talk(['', 'n', '', ''], { ...given, lost: undefined });
    expect(asked.length).toBe(4);
    expect(said).toEqual(given);
  });
});
