/** What goes in and comes out of `calc removal`. */
import { describe, expect, it } from 'vitest';
import { bareRemoval } from './bare-removal.ts';

const { ask, example } = bareRemoval;
const part = (id: string, more: object = {}) => ({ id, removeMin: 1, refitMin: 1, verifyMin: 1, ...more });
const job = (id: string, more: object = {}) => ({ id, minutes: 5, ...more });

describe('removal asked bare', () => {
  it('comes out as minutes, what is off, the steps and a bound', () => {
    expect(ask(example)).toEqual({
      minutes: 25,
      bound: 25,
      off: ['wheel', 'hub'],
      steps: [
        { step: 'remove', part: 'wheel', minutes: 2 },
        { step: 'remove', part: 'hub', minutes: 3 },
        { step: 'job', job: 'bearing', minutes: 10 },
        { step: 'refit and verify', part: 'hub', minutes: 6 },
        { step: 'refit and verify', part: 'wheel', minutes: 4 },
      ],
      removal: { minutes: 15, off: ['wheel', 'hub'], bound: 15 },
    });
  });

  it('takes an array and gives one, each with its id', () => {
    expect(
      ask([
        { ...example, id: 'a' },
        { ...example, id: 7 },
      ]),
    ).toMatchObject([{ id: 'a' }, { id: 7 }]);
  });

  it('says what is chosen in a window, what is left out and what that would take', () => {
    const jobs = [job('brakes', { tier: 0, severity: 2 }), job('steering', { tier: 0, severity: 1 }), job('paint')];
    expect(ask({ parts: [], jobs, budget: 7 })).toMatchObject({
      minutes: 15,
      budget: {
        window: 7,
        chosen: ['steering'],
        minutes: 5,
        proven: true,
        valueByTier: [1, 0],
        leftOut: [
          { job: 'brakes', adds: { minutes: 5, exact: true }, window: { minutes: 10, smallest: true } },
          { job: 'paint', adds: { minutes: 5, exact: true }, window: { minutes: 15, smallest: true } },
        ],
        safetyNeeds: { minutes: 10, bound: 10 },
      },
    });
  });

  it('says when the window is too short even to close up', () => {
    const asked = { parts: [part('tank')], jobs: [], start: { off: ['tank'] }, budget: 1 };
    expect(ask(asked)).toMatchObject({ budget: { needs: 2, tooShort: 'To close up alone takes 2 minutes.' } });
  });

  it('says why there is no plan', () => {
    const jobs = [job('weigh', { needsComplete: true }), job('tank', { needsRemoved: [['tank']], after: ['weigh'] })];
    expect(ask({ parts: [part('tank')], jobs })).toEqual({ noPlan: expect.stringMatching(/No order of the jobs/) });
  });

  it.each([
    [
      'a circle of ways',
      {
        parts: [part('a', { access: [['b']] }), part('b', { access: [['a']] })],
        jobs: [job('j', { needsRemoved: [['a']] })],
      },
      'parts',
      'a circle with "j"',
    ],
    [
      'jobs after themselves',
      { parts: [], jobs: [job('j', { after: ['k'] }), job('k', { after: ['j'] })] },
      'jobs',
      'a circle with "j", "k"',
    ],
    [
      'an unknown part',
      { parts: [], jobs: [job('j', { needsRemoved: [['seat']] })] },
      'jobs/0/needsRemoved/0/0',
      '"seat"',
    ],
    ['an id given twice', { parts: [part('a'), part('a')], jobs: [] }, 'parts/1/id', '"a" again'],
    ['negative minutes', { parts: [], jobs: [job('j', { minutes: -1 })] }, 'jobs/0/minutes', '-1'],
    [
      'a posture without minutes to another',
      { parts: [], jobs: [], postures: ['stand', 'side'], change: { stand: { side: 2 } } },
      'change/side/stand',
      'nothing',
    ],
    ['a posture that is not there', { parts: [], jobs: [job('j', { posture: 'roof' })] }, 'jobs/0/posture/0', '"roof"'],
  ])('refuses %s', (_, question, path, got) => {
    expect(ask(question)).toMatchObject({ kind: 'problems', problems: [{ path, got }] });
  });

  it('answers ten thousand jobs on a thousand parts with a gap, not with silence', () => {
    const parts = Array.from({ length: 1000 }, (_, n) =>
      part(`p${n}`, n < 20 ? {} : { access: [[`p${n - 20}`], [`p${n % 19}`, `p${n - 7}`]] }),
    );
    const jobs = Array.from({ length: 10_000 }, (_, n) => job(`j${n}`, { needsRemoved: [[`p${(n * 37) % 1000}`]] }));
    const answer = ask({ parts, jobs }) as { minutes: number; bound: number };
    expect(answer.minutes).toBeGreaterThanOrEqual(answer.bound);
    expect(answer.bound).toBeGreaterThanOrEqual(50_000); // the jobs alone
    const some = ask({ parts, jobs: jobs.slice(0, 200), budget: 500 }) as { budget: { minutes: number } };
    expect(some.budget.minutes).toBeLessThanOrEqual(500);
  });
});
