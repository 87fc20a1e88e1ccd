// @vitest-environment happy-dom
import { expect, test, vi } from 'vitest';
import { alike, demoApp, snapshotOf } from '../../../test/demo.ts';
import { drawn } from '../../../test/dom.ts';
import { slowBook } from '../../../test/slow-book.ts';
import { keepIn } from '../place.ts';
import { Incoming } from './incoming.tsx';

test('a log lies on the table of the kart it was put down for, and stays there while another kart is looked at', async () => {
  vi.stubGlobal(
    'Worker',
    class {
      postMessage(): void {}
      terminate(): void {}
    },
  );
  const app = await demoApp();
  await app.fileKart(alike('77'), { by: 'J. Moor' });
  const keep = keepIn(undefined);
  const { session } = slowBook();
  const tableOf = async (kart: string) => {
    const page = drawn();
    await page.show(<Incoming {...{ session, keep }} snapshot={await snapshotOf(app, kart)} page={undefined} />);
    return page;
  };
  const table = await tableOf('41');
  await table.put('#logs', [Object.assign(new Blob(['time,lat,lon\n']), { name: 'evening.csv' })]);
  expect(table.button(/Cancel evening.csv/)).toBe('ready');
  expect((await tableOf('77')).button(/evening.csv/)).toBe('none');
  expect((await tableOf('41')).button(/Cancel evening.csv/)).toBe('ready');
});
