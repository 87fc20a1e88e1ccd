import { expect, test } from 'vitest';
import { payload } from '../book/index.ts';
import { ENTRIES, type Entry, entryDraft, fieldOf, fieldsOf, PART_ITSELF, readFields } from './write-down.ts';

const entry = (kind: Entry['kind']): Entry => ENTRIES.find(e => e.kind === kind) as Entry;

test('a run is written with its length in minutes, its laps and where it was hit', () => {
  const typed = {
    minutes: '0.2 h',
    laps: '11',
    wet: 'yes',
    severity: 'knock',
    corner: 'rear left',
    session: ' heat 2 ',
  };
  expect(entryDraft(entry('ran'), typed)).toEqual({
    ok: true,
    draft: {
      kind: 'ran',
      minutes: 12,
      laps: 11,
      wet: true,
      session: 'heat 2',
      impact: { corner: 'rear left', severity: 'knock' },
    },
  });
});

test('a bare number of minutes is in minutes, as it says beside the field', () => {
  expect(entryDraft(entry('ran'), { minutes: '12' })).toMatchObject({ draft: { kind: 'ran', minutes: 12 } });
});

test('everything that is missing or no number is told at once, each at its field', () => {
  const drafted = entryDraft(entry('ran'), { minutes: 'a while', laps: '-3', severity: 'hit' });
  if (drafted.ok) throw new Error('expected a refusal');
  expect(drafted.problems.map(p => fieldOf(entry('ran'), p)?.key)).toEqual(['minutes', 'laps', 'corner']);
  for (const { message, remedy } of drafted.problems) {
    expect(message).toMatch(/^Expected .*, got .*\.$/);
    expect(remedy).not.toBe('');
  }
});

test('a moment typed in local time is kept in UTC, and says when it happened rather than what', () => {
  const at = '2026-11-25T18:30';
  const drafted = entryDraft(entry('note'), { text: 'new gloves', at });
  expect(drafted).toEqual({
    ok: true,
    draft: { kind: 'note', text: 'new gloves' },
    at: new Date(2026, 10, 25, 18, 30).toISOString(),
  });
});

test('a set-up change names what was changed', () => {
  const typed = { setting: 'main jet', to: '168', why: 'cold air' };
  expect(entryDraft(entry('set-up'), typed)).toMatchObject({
    draft: { kind: 'set-up', changes: { 'main jet': '168' }, why: 'cold air' },
  });
});

test('what every entry writes is a fact the book takes', () => {
  const value = (f: Entry['fields'][number]): string => {
    if (f.is === 'choice') return f.choices?.[0]?.[0] ?? 'Round 1';
    if (f.is === 'photo') return '0'.repeat(64);
    return { moment: '2026-11-25T18:30', tick: 'yes', count: '3', minutes: '4', hours: '5' }[f.is as string] ?? 'words';
  };
  for (const one of ENTRIES) {
    const full = entryDraft(one, Object.fromEntries(one.fields.map(f => [f.key, value(f)])));
    const least = entryDraft(one, Object.fromEntries(one.fields.filter(f => f.must).map(f => [f.key, value(f)])));
    for (const drafted of [full, least])
      expect(drafted.ok && payload.safeParse(drafted.draft), one.kind).toMatchObject({ success: true });
  }
});

test('a failure is asked in few steps, every field in one of them, the joints once the part is known', () => {
  const failed = entry('failed');
  const steps = failed.steps ?? [];
  expect(steps.length).toBeLessThanOrEqual(4);
  expect(steps.flatMap(([, keys]) => keys).sort()).toEqual(failed.fields.map(f => f.key).sort());
  const shown = (step: number, typed: Record<string, string>) => fieldsOf(failed, step, typed).map(f => f.key);
  expect(shown(0, {})).toEqual(['part', 'how']);
  expect(shown(0, { part: 'chain' })).toEqual(['part', 'joint', 'how']);
  expect(shown(2, {})).toEqual(['lost', 'stopped', 'severity']);
  expect(shown(2, { severity: 'hit' })).toContain('corner');
  expect(readFields(fieldsOf(failed, 0, {}), {}).problems.map(p => fieldOf(failed, p)?.key)).toEqual(['part', 'how']);
});

test('a failure names its joint, or none where the part itself failed; its hours are kept in minutes', () => {
  const typed = { part: 'chain', how: 'link gone', after: '6.5', lost: 'keep running\nguard chain', stopped: 'yes' };
  expect(entryDraft(entry('failed'), { ...typed, joint: 'chain/joining link' })).toEqual({
    ok: true,
    draft: {
      kind: 'failed',
      part: 'chain',
      joint: 'chain/joining link',
      how: 'link gone',
      afterMinutes: 390,
      lost: ['keep running', 'guard chain'],
      stopped: true,
    },
  });
  const itself = entryDraft(entry('failed'), { ...typed, joint: PART_ITSELF });
  expect(itself.ok && itself.draft).not.toHaveProperty('joint');
});

test('a refusal of the book is shown at its field, and one about the whole entry at its end', () => {
  const problem = (where: string) => ({ code: 'far outside', where, message: '', remedy: '' }) as const;
  expect(fieldOf(entry('ran'), problem('fact.minutes'))?.key).toBe('minutes');
  expect(fieldOf(entry('ran'), problem('fact.impact.corner'))?.key).toBe('corner');
  expect(fieldOf(entry('ran'), problem('at'))?.key).toBe('at');
  expect(fieldOf(entry('ran'), problem('kart'))).toBeUndefined();
});
