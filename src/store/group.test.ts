import { describe, expect, it } from 'vitest';
import { Group, type Outcome } from './group.ts';
import { StoreError } from './store-error.ts';

/** A place that keeps what was committed, and how often the disk was forced. */
function place(fails: (works: readonly string[]) => boolean = () => false) {
  const kept: string[] = [];
  const commits: number[] = [];
  const group = new Group<string>(async works => {
    await new Promise(done => setTimeout(done, 1));
    if (fails(works)) throw new Error(`full: ${works.join(' ')}`);
    const right = works.filter(work => !work.startsWith('wrong'));
    kept.push(...right);
    commits.push(works.length);
    return works.map(
      (work): Outcome => (right.includes(work) ? { value: `${work} kept` } : { error: `${work} refused` }),
    );
  });
  return { group, kept, commits };
}

describe('writes that come together', () => {
  it('are committed together and acknowledged after that, each with its own answer', async () => {
    const { group, kept, commits } = place();
    const answers = await Promise.allSettled(['a', 'wrong b', 'c'].map(work => group.add(work)));
    expect(answers).toEqual([
      { status: 'fulfilled', value: 'a kept' },
      { status: 'rejected', reason: 'wrong b refused' },
      { status: 'fulfilled', value: 'c kept' },
    ]);
    expect([kept, commits]).toEqual([['a', 'c'], [3]]);
  });

  it('are done one by one where together they fail, so that one does not spoil another’s', async () => {
    const { group, kept } = place(works => works.includes('large'));
    const answers = await Promise.allSettled(['a', 'large', 'c'].map(work => group.add(work)));
    expect(answers.map(({ status }) => status)).toEqual(['fulfilled', 'rejected', 'fulfilled']);
    expect(answers[1]).toMatchObject({ reason: { message: 'full: large' } });
    expect(kept).toEqual(['a', 'c']);
  });

  it('are not tried again when the database went out of reach: what was written then would stand there twice', async () => {
    const gone = new StoreError('cannot open', 'the database is out of reach', 'see that it runs');
    let tries = 0;
    const group = new Group<string>(async () => {
      tries++;
      throw gone;
    });
    const answers = await Promise.allSettled(['a', 'b', 'c'].map(work => group.add(work)));
    expect(answers).toEqual(['a', 'b', 'c'].map(() => ({ status: 'rejected', reason: gone })));
    expect(tries).toBe(1);
  });

  it('keep their order, many as they are, and none waits for ever', async () => {
    const { group, kept, commits } = place();
    const works = Array.from({ length: 200 }, (_, n) => `w${n}`);
    await Promise.all(works.map(work => group.add(work)));
    await group.settled();
    expect(kept).toEqual(works);
    expect(Math.max(...commits)).toBeLessThanOrEqual(64);
    expect(await group.add('later')).toBe('later kept');
  });
});
