/** Flags for a browser under test. */
export const chromiumFlags: readonly string[];
/** Path of a Chromium that is there, or undefined. */
export function findChromium(): Promise<string | undefined>;
/** As findChromium, but gets one when there is none; throws, saying what to do, when that fails too. */
export function ensureChromium(): Promise<string>;
