/**
 * The traces of a 25 Hz lap moved, as far as a few seconds go: frames as the page is given them, on a thread slowed 4 ×,
 * beside those of an empty page in the same browser. The laps are long, so that there is much to draw.
 */
import type { Browser, Page } from 'playwright-core';
import { drive } from '../../test/drive.ts';
import { csvOf } from '../../test/drive-files.ts';
import { startBuilt } from '../../test/journeys/served.ts';
import type { Figure } from '../measure.ts';
import { atRest, openPhone, type Phone, SLOWER, withBrowser } from './browser.ts';
import { middle } from './took.ts';

const RATE = 25;
const LONGER = 4; // a lap of two and a half minutes
const SECONDS = 4;
const LEAST = 50; // frames a second
const TURNS = 3;
/** A press of Nearer shows half as much. */
const PRESSES = [0, 2, 3, 5];

export const pans = (): Promise<readonly Figure[]> => withBrowser(figures);

async function figures(browser: Browser): Promise<readonly Figure[]> {
  const served = await startBuilt(['serve']);
  try {
    await served.post('/api/karts/7/facts', {
      by: 'A. Bench',
      payloads: [{ kind: 'kart filed', text: 'kart: 1\nname: "7"\ntemplate: six-speed gearbox\n' }],
    });
    const { status } = await fetch(new URL('/api/karts/7/laps?by=A.%20Bench&name=long.csv', served.url), {
      method: 'POST',
      body: longLaps(),
    });
    if (status !== 201) throw new Error(`bench: the log must be taken, got ${status}`);
    const phone = await openPhone(browser);
    const { page } = phone;
    await page.goto('about:blank');
    const empty = await frames(phone, () => idle(page));
    await page.goto(`${served.url}#/laps/compare`);
    await page.locator('.trace-strip').waitFor({ timeout: 120_000 });
    const lap = await page.getByRole('status').filter({ hasText: 'Shown:' }).textContent();
    const all: Figure[] = [
      { what: `two laps of a log of ${RATE} fixes a second`, value: `${/\d+ m/.exec(lap ?? '')?.[0]}` },
      said('an empty page', empty),
    ];
    let pressed = 0;
    for (const presses of PRESSES) {
      for (; pressed < presses; pressed++) await page.getByRole('button', { name: 'Nearer', exact: true }).click();
      await page.locator('.trace-strip').first().scrollIntoViewIfNeeded();
      await page
        .locator('.trace-strip')
        .first()
        .evaluate(strip => strip.scrollTo({ left: 0, behavior: 'instant' }));
      await atRest(page);
      if (presses === 0) all.push(said('the whole lap, nothing moved', await frames(phone, () => idle(page)), empty));
      else
        all.push(
          said(`a part of 1/${2 ** presses} of the lap, moved`, await frames(phone, () => panned(phone)), empty),
        );
    }
    await phone.close();
    return all;
  } finally {
    await served.stop();
  }
}

/** An invented drive, every way in it and every time four times as long; places are off as those of a receiver. */
function longLaps(): string {
  const error = { slow: 0.2, memory: 10, quick: 0.01, speed: 0.03 };
  const { rows } = drive({ laps: 5, rate: RATE * LONGER, error });
  const [middleLat, middleLon] = [middle(rows.map(({ lat }) => lat)), middle(rows.map(({ lon }) => lon))];
  return csvOf(
    rows.map(({ time, lat, lon, ...rest }) => ({
      ...rest,
      time: time * LONGER,
      lat: middleLat + (lat - middleLat) * LONGER,
      lon: middleLon + (lon - middleLon) * LONGER,
    })),
  );
}

type Frames = {
  readonly took: readonly number[]; // ms from frame to frame
  readonly moved: number; // share of frames that show another place than the one before
  readonly cpu: number; // share of the page's thread
};

/** Counted in the page, from one call of it to the next. */
async function frames({ page, cpu }: Phone, work: () => Promise<void>): Promise<Frames> {
  const before = await cpu();
  await page.evaluate(() => {
    const counted: (readonly [at: number, place: number])[] = [];
    const count = (at: number): void => {
      counted.push([at, document.querySelector('.trace-strip')?.scrollLeft ?? 0]);
      if (counted.length < 10_000) requestAnimationFrame(count);
    };
    requestAnimationFrame(count);
    Object.assign(globalThis, { counted });
  });
  await work();
  const at = await page.evaluate(() => {
    const { counted } = globalThis as unknown as { counted: (readonly [number, number])[] };
    return counted.splice(0, 10_000);
  });
  const steps = at.slice(1).map(([when, place], n) => {
    const [before, from] = at[n] as readonly [number, number];
    return { took: when - before, moved: place !== from };
  });
  const took = steps.map(each => each.took);
  const moved = steps.filter(each => each.moved).length / steps.length;
  return { took, moved, cpu: ((await cpu()) - before) / (took.reduce((sum, each) => sum + each, 0) || 1) };
}

const idle = (page: Page): Promise<void> => page.waitForTimeout(SECONDS * 1000);

/** Moved from the beginning of the lap on as by a trackpad, made inside the browser: frame by frame, however busy this program is. */
async function panned({ page }: Phone): Promise<void> {
  const box = await page.locator('.trace-strip').first().boundingBox();
  if (box === null) throw new Error('bench: traces must be there to be moved, got none');
  const line = await page.context().newCDPSession(page);
  const wide = box.width - 40;
  await line.send('Input.synthesizeScrollGesture', {
    ...{ x: box.x + box.width - 20, y: box.y + box.height / 2, gestureSourceType: 'mouse' },
    ...{ xDistance: -wide, speed: Math.round((wide * TURNS) / SECONDS), repeatCount: TURNS - 1, repeatDelayMs: 0 },
  });
  await line.detach();
}

function said(what: string, of: Frames, than?: Frames): Figure {
  const { took, moved, cpu } = of;
  const rate = (of: Frames): number => (1000 * of.took.length) / of.took.reduce((sum, each) => sum + each, 0);
  const ratio = than && `${(rate(of) / rate(than)).toFixed(2)} × the empty page`;
  const rest = `frame ${middle(took).toFixed(1)} ms, worst ${Math.max(...took).toFixed(0)} ms, ${(100 * cpu).toFixed(0)} % of the thread${moved > 0 ? `, moved in ${(100 * moved).toFixed(0)} % of them` : ''}`;
  return {
    what: `${what} (${SLOWER} × slower)`,
    value: `${rate(of).toFixed(1)} a s`,
    ratio: [ratio, rest, than && `goal ${LEAST}`].filter(Boolean).join('; '),
  };
}
