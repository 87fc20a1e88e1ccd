/** What the server says of itself: one JSON object a line, without names, addresses or anything a person wrote. */
const LEVELS = ['debug', 'info', 'warn', 'error', 'none'] as const;
type Level = (typeof LEVELS)[number];
export const levelOf = (text: string): Level => LEVELS.find(one => one === text) ?? 'error';
type Said = Readonly<Record<string, string | number | boolean>>;
export type Log = (level: Exclude<Level, 'none'>, event: string, more?: Said) => void;

/** Lines of at least this level, written out as they come. */
export function jsonLines(least: Level, write: (line: string) => void, now: () => Date): Log {
  return (level, event, more = {}) => {
    if (LEVELS.indexOf(level) < LEVELS.indexOf(least)) return;
    write(`${JSON.stringify({ time: now().toISOString(), level, event, ...more })}\n`);
  };
}

/**
 * What an error says of the program, not of a person: its kind, its code and where it came from. The message stays out, for it
 * may quote what somebody wrote.
 */
export function inLog(error: unknown): Said {
  if (!(error instanceof Error)) return { kind: typeof error };
  const { code } = error as { code?: unknown };
  const at = /\n\s+at (.+)/
    .exec(error.stack ?? '')?.[1]
    ?.replace(/^.*[\\/(]/, '')
    .replace(/\)$/, '');
  return { kind: error.name, ...(typeof code === 'string' && { code }), ...(at !== undefined && { at }) };
}
