/**
 * GPX 1.1: the points of every track segment, with their time. Speed [m/s] and course [°] are not part of 1.1; where an
 * extension or an older file names them so, they are read.
 * Source: GPX 1.1 schema, topografix.com/GPX/1/1 (excerpt read; the rest memory).
 */
import type { LogProblem, Zero } from '../../model.ts';
import { DAY, momentOf, zeroOf } from '../clock.ts';
import type { Reader, Sink } from '../reader.ts';
import { attributeOf, XmlPull } from './xml-pull.ts';

type Said = 'time' | 'ele' | 'speed' | 'course';
const SAID: ReadonlySet<string> = new Set<Said>(['time', 'ele', 'speed', 'course']);
const RADIANS = Math.PI / 180;
const NUMBER = /^\s*[-+]?(\d+\.?\d*|\.\d+)([eE][-+]?\d+)?\s*$/;
const numberOf = (text: string | undefined): number =>
  text !== undefined && NUMBER.test(text) ? Number(text) : Number.NaN;

export class GpxReader implements Reader {
  readonly #sink: Sink;
  readonly #xml: XmlPull;
  #first: number | undefined; // day of second 0
  #unzoned = false;
  #root: string | undefined;
  #point: { readonly lat: number; readonly lon: number } | undefined;
  #said: { [said in Said]?: string } = {};
  #saying: Said | undefined;
  #problem: LogProblem | undefined;

  constructor(sink: Sink) {
    this.#sink = sink;
    this.#xml = new XmlPull({
      open: (name, attributes) => this.#open(name, attributes),
      text: text => {
        if (this.#saying) this.#said[this.#saying] = (this.#said[this.#saying] ?? '') + text;
      },
      close: name => this.#close(name),
    });
  }

  feed(text: string): void {
    if (this.#problem === undefined) this.#xml.feed(text);
  }
  end(): void {
    if (this.#problem === undefined) this.#xml.end();
  }
  zero(): Zero {
    return zeroOf(this.#first);
  }
  problem(): LogProblem | undefined {
    return this.#problem ?? this.#xml.problem;
  }
  notes(): readonly string[] {
    return this.#unzoned ? ['The times name no zone; they are read as UTC.'] : [];
  }

  #open(name: string, attributes: string): void {
    if (this.#root === undefined) {
      this.#root = name;
      if (name !== 'gpx') this.#problem = notGpx(name, this.#xml.line());
    } else if (name === 'trkpt') {
      this.#point = { lat: numberOf(attributeOf(attributes, 'lat')), lon: numberOf(attributeOf(attributes, 'lon')) };
      this.#said = {};
    } else if (name === 'wpt' || name === 'rtept') this.#sink.tally.add('not on the track', this.#xml.line());
    else if (this.#point && SAID.has(name)) this.#saying = name as Said;
  }

  #close(name: string): void {
    if (name === this.#saying) this.#saying = undefined;
    if (name !== 'trkpt' || this.#point === undefined || this.#problem) return;
    const { time, ele, speed, course } = this.#said;
    this.#sink.gather.take({
      line: this.#xml.line(),
      time: this.#time(time ?? ''),
      ...this.#point,
      speed: numberOf(speed),
      heading: numberOf(course) * RADIANS,
      rotation: Number.NaN,
      height: numberOf(ele),
      accuracy: Number.NaN,
    });
    this.#point = undefined;
  }

  #time(text: string): number {
    const moment = momentOf(text);
    if (moment === undefined) return Number.NaN;
    this.#unzoned ||= !moment.zoned;
    this.#first ??= moment.day;
    return (moment.day - this.#first) * DAY + moment.seconds;
  }
}

const notGpx = (name: string, line: number): LogProblem => ({
  line,
  expected: '<gpx> as the outermost element',
  got: `<${name.slice(0, 40)}>`,
  remedy: 'export the track as GPX 1.1',
});
