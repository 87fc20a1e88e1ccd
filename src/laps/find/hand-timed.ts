/** Lap times read off a stopwatch and typed in: "52.31", "0:52.31", "1.02,5", "1'02.5", one or many. */

export type HandTimed = {
  readonly kind: 'lap';
  readonly text: string;
  readonly time: number; // s
  /** One standard deviation, s: a thumb at both ends, and the last digit. */
  readonly spread: number;
};
export type NotTimed = {
  readonly kind: 'no lap';
  readonly text: string;
  readonly expected: string;
  readonly remedy: string;
};

/** A thumb is off by so much each time, s: common practice. What all presses share cancels. */
const THUMB = 0.1;
/** No lap is shorter or longer, s: common practice. */
const SHORTEST = 10;
const LONGEST = 1800;

const FORMS = [
  /^()(\d{1,4})(?:[.,](\d{1,3}))?$/, // 52.31
  /^(\d{1,2})[:'′](\d{1,2})(?:[.,](\d{1,3}))?["″]?$/, // 0:52.31, 1'02.5"
  /^(\d{1,2})\.(\d\d)[,.](\d{1,3})$/, // 1.02,5
];

/** One after the other, whatever stands between them that is no part of a time: a space, a semicolon, a line end. */
export const handTimedLaps = (text: string): readonly (HandTimed | NotTimed)[] =>
  text.split(/[\s;]+/).flatMap(each => (each === '' ? [] : [handTimed(each)]));

function handTimed(text: string): HandTimed | NotTimed {
  const wrong = (expected: string, remedy: string): NotTimed => ({ kind: 'no lap', text, expected, remedy });
  const found = FORMS.map(form => form.exec(text)).find(each => each !== null);
  const [, minutes = '', seconds = '', digits = ''] = found ?? [];
  if (!found || (minutes !== '' && Number(seconds) >= 60))
    return wrong('seconds, or minutes and seconds', 'write 52.31 or 1:02.5');
  // Put together as text, so that 1:02.31 is the number 62.31 and not one beside it.
  const time = Number(`${Number(minutes) * 60 + Number(seconds)}.${digits === '' ? '0' : digits}`);
  if (!(time >= SHORTEST && time <= LONGEST))
    return wrong(`a lap of ${SHORTEST} s to ${LONGEST / 60} min`, 'write minutes with a colon, as in 1:02.5');
  // Rounded to its last digit, or cut there: evenly within one, at both ends.
  const digit = 10 ** -digits.length;
  return { kind: 'lap', text, time, spread: Math.sqrt(2 * THUMB ** 2 + digit ** 2 / 6) };
}
