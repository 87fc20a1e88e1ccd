/** Text for a terminal of 80 columns. */
export const WIDTH = 80;

/** Breaks at spaces; the first line begins with `first`, the others with as many blanks. */
export function wrap(text: string, first = '', width = WIDTH): string {
  const lines: string[] = [];
  let line = '';
  for (const word of text.split(/\s+/).filter(part => part !== '')) {
    if (line !== '' && first.length + line.length + 1 + word.length > width) {
      lines.push(line);
      line = word;
    } else line = line === '' ? word : `${line} ${word}`;
  }
  lines.push(line);
  const blank = ' '.repeat(first.length);
  return `${lines.map((each, i) => `${i === 0 ? first : blank}${each}`.trimEnd()).join('\n')}\n`;
}

export const heading = (text: string): string => `\n${text.toUpperCase()}\n${'-'.repeat(text.length)}\n`;

export const count = (n: number, one: string, many = `${one}s`): string => `${n} ${n === 1 ? one : many}`;

/** '2 h 05 min', '45 min'. */
export function duration(minutes: number): string {
  const whole = Math.round(minutes);
  if (whole < 60) return `${whole} min`;
  return `${Math.floor(whole / 60)} h ${String(whole % 60).padStart(2, '0')} min`;
}

/** '2026-11-25 15:45 UTC', as the book keeps it. */
export const shortTime = (at: string): string => `${at.slice(0, 10)} ${at.slice(11, 16)} UTC`;
