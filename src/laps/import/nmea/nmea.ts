/**
 * NMEA 0183: RMC (place, speed, course, date), GGA (place, height) and VTG (course, speed) of any talker. Sentences of
 * the same time are one fix: what a damaged one would have said, the other may still say.
 */
import type { LogProblem, Zero } from '../../model.ts';
import { DAY, DayClock, dayOf, zeroOf } from '../clock.ts';
import { Lines } from '../lines.ts';
import type { Reader, Sink } from '../reader.ts';
import { degreesOf, numberOf, type Sentence, secondsOf, sentenceOf } from './sentence.ts';

const KNOT = 1852 / 3600; // m/s, exact
const RADIANS = Math.PI / 180;
const WANTED: ReadonlySet<string> = new Set(['RMC', 'GGA', 'VTG']);

/** What the sentences of one time say together. */
type Epoch = {
  readonly line: number;
  readonly clock: string; // as written
  readonly seconds: number; // of the day
  rmc: boolean; // heard
  gga: boolean;
  valid: boolean;
  day: number | undefined;
  lat: number;
  lon: number;
  speed: number;
  heading: number;
  height: number;
};

export class NmeaReader implements Reader {
  readonly #sink: Sink;
  readonly #lines: Lines;
  readonly #day = new DayClock();
  #first: number | undefined; // day of second 0
  #epoch: Epoch | undefined;

  constructor(sink: Sink) {
    this.#sink = sink;
    this.#lines = new Lines(
      (line, number) => this.#line(line, number),
      number => sink.tally.add('too long', number),
    );
  }

  feed(text: string): void {
    this.#lines.feed(text);
  }
  /** A last line without an end counts: its checksum tells whether it is whole. */
  end(): void {
    const last = this.#lines.end();
    if (last) this.#line(last.line, last.number);
    this.#flush();
  }
  zero(): Zero {
    return zeroOf(this.#first);
  }
  problem(): LogProblem | undefined {
    return undefined;
  }
  notes(): readonly string[] {
    return this.#first === undefined ? ['No sentence says the date; times are of a day that is not known.'] : [];
  }

  #line(line: string, number: number): void {
    const read = line.trim() === '' ? 'blank' : sentenceOf(line, WANTED);
    if (typeof read === 'string') this.#sink.tally.add(read, number);
    else if (read.formatter === 'VTG') vtg(this.#epoch, read);
    else this.#placed(read, number);
  }

  #placed(sentence: Sentence, number: number): void {
    const open = this.#epoch;
    const rmcHere = sentence.formatter === 'RMC';
    const clock = sentence.field(0);
    if (open === undefined || open.clock !== clock || (rmcHere ? open.rmc : open.gga)) this.#flush();
    const epoch = this.#epoch ?? newEpoch(number, clock);
    this.#epoch = epoch;
    if (rmcHere) rmc(epoch, sentence);
    else gga(epoch, sentence);
  }

  #flush(): void {
    const epoch = this.#epoch;
    this.#epoch = undefined;
    if (epoch === undefined) return;
    const { valid, line, lat, lon, speed, heading, height } = epoch;
    if (!valid) this.#sink.tally.add('not valid', line);
    else {
      const time = this.#time(epoch.seconds, epoch.day);
      this.#sink.gather.take({ line, time, lat, lon, speed, heading, height, rotation: NOT_SAID, accuracy: NOT_SAID });
    }
  }

  /** By the date where one is said, else by the day that follows from the time before. */
  #time(seconds: number, day: number | undefined): number {
    if (Number.isNaN(seconds)) return seconds;
    const rolled = this.#day.on(seconds);
    if (day === undefined) return rolled;
    this.#first ??= day - Math.round((rolled - seconds) / DAY);
    const dated = (day - this.#first) * DAY + seconds;
    if (dated !== rolled) this.#day.set(dated);
    return dated;
  }
}

const NOT_SAID = Number.NaN;
const newEpoch = (line: number, clock: string): Epoch => ({
  line,
  clock,
  seconds: secondsOf(clock),
  rmc: false,
  gga: false,
  valid: true,
  day: undefined,
  lat: NOT_SAID,
  lon: NOT_SAID,
  speed: NOT_SAID,
  heading: NOT_SAID,
  height: NOT_SAID,
});

/** hhmmss.ss, A or V, lat, N/S, lon, E/W, knots, course true, ddmmyy, variation, its side, mode (from 2.3 on). */
function rmc(epoch: Epoch, { field }: Sentence): void {
  const mode = field(11);
  epoch.rmc = true;
  if (field(1) !== 'A' || mode === 'N' || mode === 'E') epoch.valid = false;
  epoch.lat = degreesOf(field(2), field(3));
  epoch.lon = degreesOf(field(4), field(5));
  epoch.speed = numberOf(field(6)) * KNOT;
  epoch.heading = numberOf(field(7)) * RADIANS;
  epoch.day = dayOfDate(field(8)) ?? epoch.day;
}

/** hhmmss.ss, lat, N/S, lon, E/W, quality (0 none, 6 estimated), satellites, dilution, height, M ... */
function gga(epoch: Epoch, { field }: Sentence): void {
  epoch.gga = true;
  if (!/^[1-57-9]$/.test(field(5))) epoch.valid = false;
  if (field(9) === 'M') epoch.height = numberOf(field(8));
  if (epoch.rmc) return;
  epoch.lat = degreesOf(field(1), field(2));
  epoch.lon = degreesOf(field(3), field(4));
}

/** Course true, T, magnetic, M, knots, N ... Says no time: it belongs to the fix that is being put together. */
function vtg(epoch: Epoch | undefined, { field }: Sentence): void {
  if (epoch === undefined) return;
  if (Number.isNaN(epoch.speed)) epoch.speed = numberOf(field(4)) * KNOT;
  if (Number.isNaN(epoch.heading)) epoch.heading = numberOf(field(0)) * RADIANS;
}

/** Two digits of the year: 80 and above are of the last century, for satellite time begins in 1980 (common practice). */
function dayOfDate(text: string): number | undefined {
  if (!/^\d{6}$/.test(text)) return undefined;
  const year = Number(text.slice(4));
  return dayOf(year + (year < 80 ? 2000 : 1900), Number(text.slice(2, 4)), Number(text.slice(0, 2)));
}
