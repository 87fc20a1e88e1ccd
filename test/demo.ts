/** The invented demo in a book of its own, and what the page holds of one of its karts. */
import { type App, createApp } from '../src/app/index.ts';
import { demoText, kartReader, libraryFiles, randomIds } from '../src/host/index.ts';
import { memoryStore } from '../src/store/memory/index.ts';
import type { Snapshot } from '../src/web/session.ts';

const reader = kartReader(libraryFiles());
const clock = { now: () => new Date() };

export async function demoApp(): Promise<App> {
  const app = createApp({ store: memoryStore(), clock, ids: randomIds, reader, device: 'laptop' });
  await app.seedDemo(demoText());
  return app;
}

/** The kart of the demo once more, under another name: its steps have the same keys. */
export const alike = (name: string): string => demoText().kart.replace('name: "41"', `name: "${name}"`);

export async function snapshotOf(app: App, kart: string): Promise<Snapshot> {
  const { facts, ...answers } = await app.answers(kart);
  return { ...answers, facts: facts.toReversed(), entries: facts.length };
}
