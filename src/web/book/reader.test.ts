import { expect, test } from 'vitest';
import { demoText, kartReader, libraryFiles } from '../../host/index.ts';
import { ownInMemory } from './own-in-memory.ts';
import { deviceReader } from './reader.ts';
import { OutOfReach, type Remote } from './remote.ts';

const { kart: text } = demoText();
const { packs: _, ...texts } = libraryFiles();
const onServer = kartReader(texts);

function line() {
  const state = { up: true, tag: 'one', asked: 0 };
  const remote: Pick<Remote, 'readKart' | 'library'> = {
    async readKart(of) {
      if (!state.up) throw new OutOfReach('gone');
      state.asked++;
      return onServer.read(of);
    },
    async library(tag) {
      if (!state.up) throw new OutOfReach('gone');
      return tag === state.tag ? undefined : { tag: state.tag, texts };
    },
  };
  return { state, remote };
}

test('a kart file that was read once is there without the server, until another version of the program comes', async () => {
  const [own, { state, remote }] = [ownInMemory(), line()];
  const read = await deviceReader(own, remote, 'a').read(text);
  expect(read.ok).toBe(true);
  state.up = false;
  expect(await deviceReader(own, remote, 'a').read(text)).toEqual(read);
  await expect(deviceReader(own, remote, 'b').read(text)).rejects.toThrow('gone');
});

test('a kart file that no server has read is read here, with the library fetched before', async () => {
  const [own, { state, remote }] = [ownInMemory(), line()];
  const reader = deviceReader(own, remote, 'a');
  expect(await reader.renewLibrary()).toBe(false); // nothing was read with another one
  state.up = false;
  expect(await reader.read(text)).toEqual(await onServer.read(text));
  const wrong = text.replace('1045 mm', '1045 kg');
  expect(await reader.read(wrong)).toEqual(await onServer.read(wrong));
});

test('what was read with a library that has been corrected since is read again', async () => {
  const [own, { state, remote }] = [ownInMemory(), line()];
  const reader = deviceReader(own, remote, 'a');
  await reader.renewLibrary();
  await reader.read(text);
  await reader.read(text);
  expect(state.asked).toBe(1);
  expect(await reader.renewLibrary()).toBe(false);
  state.tag = 'two';
  expect(await reader.renewLibrary()).toBe(true);
  await reader.read(text);
  expect(state.asked).toBe(2);
});

test('the library is the one of this device, else the server’s, kept from then on; with neither it says so', async () => {
  const [own, { state, remote }] = [ownInMemory(), line()];
  state.up = false;
  await expect(deviceReader(own, remote, 'a').library()).rejects.toThrow('gone');
  state.up = true;
  expect(await deviceReader(own, remote, 'a').library()).toEqual(texts);
  state.up = false;
  expect(await deviceReader(own, remote, 'a').library()).toEqual(texts);
});

test('two karts that are read at once are both kept track of, so that both can be read again when the library was corrected', async () => {
  const [own, { remote }] = [ownInMemory(), line()];
  const reader = deviceReader(own, remote, 'a');
  await Promise.all([reader.read(text), reader.read(text.replace('name: "41"', 'name: "77"'))]);
  expect(await own.get('karts')).toHaveLength(2);
});
