import { beforeEach, expect, test } from 'vitest';
import { note } from '../../../test/store-contract/note.ts';
import { createApp } from '../../app/index.ts';
import { sealNext } from '../../book/index.ts';
import { demoText, kartReader, libraryFiles } from '../../host/index.ts';
import { memoryStore } from '../../store/memory/index.ts';
import { fetchingFiles, fileFrom } from './files.ts';
import { OutOfReach } from './remote.ts';

const PHOTO = { bytes: new Uint8Array([1, 2, 3]), mediaType: 'image/png' };

/** A device with a find whose photo only the server has. */
async function device() {
  const hash = await memoryStore().putFile(PHOTO.bytes, PHOTO.mediaType);
  const store = memoryStore();
  const reader = kartReader(libraryFiles());
  const app = createApp({
    store,
    clock: { now: () => new Date() },
    ids: { next: () => 'a', salt: () => '0'.repeat(32) },
    reader,
    device: 'phone',
  });
  await app.fileKart(demoText().kart, { by: 'A. Sample' });
  const { text: _, ...rest } = { ...note('found', 'phone'), text: '' };
  const found = { ...rest, kind: 'found', part: 'rear axle', defect: 'bent', grade: 'safety', photo: hash };
  await store.appendNext('phone', last => [sealNext(last, found as Parameters<typeof sealNext>[1])]);
  return { app, hash };
}

const asked: string[] = [];
const remote = {
  async getFile(hash: string) {
    asked.push(hash);
    return PHOTO;
  },
};
beforeEach(() => {
  asked.length = 0;
});

test('a photo that another device took is fetched once, and is here from then on', async () => {
  const { app, hash } = await device();
  const fetch = fetchingFiles(app, remote);
  await fetch();
  await fetch();
  expect(asked).toEqual([hash]);
  expect(await app.getFile(hash)).toEqual(PHOTO);
  expect(await fileFrom(app, remote, hash)).toEqual(PHOTO);
  expect(asked.length).toBe(1);
});

test('a photo that only the server has is missing while that is out of reach, and no error', async () => {
  const { app, hash } = await device();
  const away = { getFile: () => Promise.reject(new OutOfReach('gone')) };
  expect(await fileFrom(app, away, hash)).toBeUndefined();
  expect(await fileFrom(app, remote, hash)).toEqual(PHOTO);
});
