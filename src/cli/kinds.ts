/** How each kind of fact is typed: its subject, its options, and an example for its help. */
import type { FactKind } from '../book/index.ts';
import type { Dimension } from '../quantity/index.ts';

export type Value =
  | 'text'
  | 'number'
  | 'yes'
  | 'time'
  | 'impact' // 'rear left, knock'
  | 'list' // 'stop, steer'
  | 'file' // a path: kept in the book, its hash in the fact
  | { readonly quantity: Dimension; readonly in: string }; // told with a unit, kept as a number in that unit

export type Option = {
  /** As commander writes it: '--minutes <n>'. */
  readonly flag: string;
  readonly key: string;
  readonly is: Value;
  readonly help: string;
  /** What a flag alone stands for: --pass is the result 'pass'. */
  readonly means?: string;
};

export type Typed = {
  /** Key and meaning of the word that follows the kind, if one does. */
  readonly subject?: {
    readonly key: string;
    readonly help: string;
    readonly is?: 'file' | 'list' | Extract<Value, { quantity: Dimension }>;
  };
  readonly options: readonly Option[];
  readonly about: string;
  readonly example: string;
};

const opt = (flag: string, key: string, is: Value, help: string): Option => ({ flag, key, is, help });
const result = (flag: string, means: string, help: string): Option => ({ flag, key: 'result', is: 'yes', means, help });

const WHY = opt('--why <text>', 'why', 'text', 'the reason');
const TRACK = opt('--track <name>', 'track', 'text', 'where');
const NOTE = opt('--note <text>', 'note', 'text', 'anything else');
const SECOND_LOOK = opt('--second-look', 'secondLook', 'yes', 'this is the second look');
const READING: readonly Option[] = [
  opt('--value <reading>', 'reading', 'text', 'what was read, with its unit: "146 mm"'),
  opt('--instrument <name>', 'instrument', 'text', 'with what it was read'),
  opt('--resolution <amount>', 'resolution', 'text', 'its finest step, with its unit: "0.5 mm"'),
];

/** A release is signed with `release`, a redaction asked for with `forget`, so they have no entry here. */
export const TYPED: Readonly<Record<Exclude<FactKind, 'released' | 'redacted'>, Typed>> = {
  'kart filed': {
    about: 'the kart file as it stands from here on',
    subject: { key: 'text', help: 'the kart file', is: 'file' },
    options: [],
    example: 'kartwright log kart-filed my-kart.yaml',
  },
  event: {
    about: 'an event that is coming, and what it will ask of the kart; the same name again replaces it',
    subject: { key: 'event', help: 'name of the event' },
    options: [
      opt('--from <time>', 'from', 'time', 'when it begins'),
      opt('--until <time>', 'until', 'time', 'when it ends'),
      opt('--minutes <n>', 'minutes', 'number', 'expected running, minutes'),
      opt('--laps <n>', 'laps', 'number', 'expected laps'),
      opt('--wet', 'wet', 'yes', 'rain is expected'),
      TRACK,
    ],
    example: 'kartwright log event "Club round 2" --from "2026-12-05 08:00" --minutes 95',
  },
  fitted: {
    about: 'a part put on',
    subject: { key: 'part', help: 'name of the part' },
    options: [
      opt('--fresh', 'fresh', 'yes', 'another one than came off'),
      opt('--serial <text>', 'serial', 'text', 'its serial number'),
      opt('--carried-minutes <n>', 'carriedMinutes', 'number', 'minutes it has run before'),
      opt('--carried-laps <n>', 'carriedLaps', 'number', 'laps it has run before'),
    ],
    example: 'kartwright log fitted "rear wheel left"',
  },
  'taken off': {
    about: 'a part taken off',
    subject: { key: 'part', help: 'name of the part' },
    options: [WHY],
    example: 'kartwright log taken-off "rear wheel left" --why "to reach the hub"',
  },
  moved: {
    about: 'a part that is off moved to another kart',
    subject: { key: 'part', help: 'name of the part' },
    options: [
      opt('--to <kart>', 'to', 'text', 'name of the other kart'),
      opt('--serial <text>', 'serial', 'text', 'its serial number'),
    ],
    example: 'kartwright log moved radiator --to 42 --serial R-7',
  },
  ran: {
    about: 'a session: engine on, kart moving',
    options: [
      opt('--minutes <n>', 'minutes', 'number', 'how long it ran, minutes'),
      opt('--laps <n>', 'laps', 'number', 'how many laps'),
      opt('--event <name>', 'event', 'text', 'at which event'),
      opt('--session <name>', 'session', 'text', 'which session'),
      opt('--wet', 'wet', 'yes', 'in the wet'),
      opt('--impact <corner,severity>', 'impact', 'impact', 'like "rear left, knock": knock, hit or crash'),
      opt('--meter-hours <n>', 'meterHours', 'number', 'what the hour meter reads afterwards'),
      opt('--conditions <text>', 'conditions', 'text', 'weather and track in words'),
      TRACK,
    ],
    example: 'kartwright log ran --minutes 12 --laps 10 --event "Club round 2" --impact "rear left, knock"',
  },
  checked: {
    about: 'an item looked at, measured or tested',
    subject: { key: 'item', help: 'part/item, as in the plan' },
    options: [
      result('--pass', 'pass', 'it holds'),
      result('--fail', 'fail', 'it does not; say --why'),
      result('--not-possible', 'not possible', 'it could not be done; say --why'),
      ...READING,
      SECOND_LOOK,
      WHY,
    ],
    example: 'kartwright log checked "axle/straight" --pass --value "0.1 mm" --instrument "dial gauge"',
  },
  made: {
    about: 'a joint made: pulled to its torque, or its retention put in',
    subject: { key: 'joint', help: 'part/joint, as in the plan' },
    options: [
      ...READING,
      { flag: '--second', key: 'second', is: 'yes', means: 'in place', help: 'the second retention is in place' },
      { flag: '--second-missing', key: 'second', is: 'yes', means: 'not fitted', help: 'it is not fitted' },
      SECOND_LOOK,
      WHY,
    ],
    example: 'kartwright log made "rear hub left/pinch bolts" --value "20 N·m" --second',
  },
  loosened: {
    about: 'a joint opened without taking its part off',
    subject: { key: 'joint', help: 'part/joint, as in the plan' },
    options: [WHY],
    example: 'kartwright log loosened "rear hub left/pinch bolts" --why "to move the hub"',
  },
  set: {
    about: 'a dimension or adjustment brought to a value',
    subject: { key: 'item', help: 'part/item, as in the plan' },
    options: [...READING, WHY],
    example: 'kartwright log set "rear hub left/rear track" --value "142.9 mm"',
  },
  found: {
    about: 'a defect found',
    subject: { key: 'part', help: 'name of the part' },
    options: [
      opt('--defect <text>', 'defect', 'text', 'what is wrong'),
      opt('--grade <grade>', 'grade', 'text', 'safety, reliability, performance or cosmetics'),
      opt('--item <id>', 'item', 'text', 'part/item it was found at'),
      opt('--photo <file>', 'photo', 'file', 'a picture of it'),
    ],
    example: 'kartwright log found "brake push rod" --defect "clip weak" --grade safety',
  },
  mended: {
    about: 'a defect put right',
    subject: { key: 'found', help: 'id of the fact that found it' },
    options: [opt('--how <text>', 'how', 'text', 'what was done')],
    example: 'kartwright log mended demo-0042 --how "new clip and strap"',
  },
  failed: {
    about: 'what failed while it ran: a part, or a joint of it that let go; in a terminal what is left out is asked',
    subject: { key: 'part', help: 'name of the part' },
    options: [
      opt('--joint <id>', 'joint', 'text', 'the joint that let go, part/joint; without it the part itself failed'),
      opt('--how <text>', 'how', 'text', 'what was seen: "pin gone, clip on the floor"'),
      opt('--event <name>', 'event', 'text', 'at which event'),
      opt('--session <name>', 'session', 'text', 'in which session'),
      opt('--lap <n>', 'lap', 'number', 'on which lap'),
      opt(
        '--after <time>',
        'afterMinutes',
        { quantity: 'time', in: 'min' },
        'how long it had run, "6.5 h" (default: on record)',
      ),
      opt('--lost <functions>', 'lost', 'list', 'what was lost with it, as the kart file names it: "stop, steer"'),
      opt('--stopped', 'stopped', 'yes', 'it stopped the kart'),
      opt('--impact <corner,severity>', 'impact', 'impact', 'like "rear left, hit": knock, hit or crash'),
      opt('--would-have-held <text>', 'wouldHaveHeld', 'text', 'what would have held it'),
      opt('--photo <file>', 'photo', 'file', 'a picture of it'),
    ],
    example:
      'kartwright log failed "brake push rod" --joint "brake push rod/clevis pins" --how "pin gone" --lost stop --stopped',
  },
  'look asked': {
    about: 'items that somebody wants looked at again, whatever was passed before',
    subject: { key: 'items', help: 'part/item, as in the plan; several with commas', is: 'list' },
    options: [WHY],
    example: 'kartwright log look-asked "rear hub left/seat" --why "a hub like it cracked"',
  },
  'put on': {
    about: 'how the kart stands now',
    subject: { key: 'posture', help: 'stand, ground, scales or side' },
    options: [],
    example: 'kartwright log put-on stand',
  },
  'set-up': {
    about: 'settings as they are from here on, as name=value',
    subject: { key: 'changes', help: 'like "front pressure=0.75 bar", any number of them' },
    options: [WHY],
    example: 'kartwright log set-up "rear sprocket=25" "front pressure=0.75 bar" --why "short circuit"',
  },
  tyres: {
    about: 'the tyre set in use',
    subject: { key: 'set', help: 'name of the set' },
    options: [opt('--cycles <n>', 'cycles', 'number', 'heat cycles so far'), NOTE],
    example: 'kartwright log tyres "set B" --cycles 2',
  },
  'fuel mixed': {
    about: 'fuel mixed',
    options: [
      opt('--fuel <amount>', 'litres', { quantity: 'volume', in: 'l' }, 'fuel, with its unit: "5 l"'),
      opt('--oil <amount>', 'oilMillilitres', { quantity: 'volume', in: 'ml' }, 'oil, with its unit: "200 ml"'),
      NOTE,
    ],
    example: 'kartwright log fuel-mixed --fuel "5 l" --oil "200 ml"',
  },
  weather: {
    about: 'weather read',
    options: [
      opt(
        '--temperature <t>',
        'celsius',
        { quantity: 'temperature', in: '°C' },
        'air, with its unit: "21 °C", or "21 °C ± 0.5 °C"',
      ),
      opt(
        '--pressure <p>',
        'pascal',
        { quantity: 'pressure-absolute', in: 'Pa' },
        'as it was read: "985 hPa"; say which it is',
      ),
      {
        flag: '--station',
        key: 'pressureIs',
        is: 'yes',
        means: 'station',
        help: 'the pressure was read at the track, on a barometer or a phone’s sensor',
      },
      {
        flag: '--qnh',
        key: 'pressureIs',
        is: 'yes',
        means: 'QNH',
        help: 'it is an airfield’s QNH; say the --elevation',
      },
      {
        flag: '--sea-level',
        key: 'pressureIs',
        is: 'yes',
        means: 'sea level',
        help: 'it is of a weather map or app; say the --elevation',
      },
      opt('--elevation <h>', 'elevation', { quantity: 'length', in: 'm' }, 'track above the sea: "250 m"'),
      opt('--humidity <h>', 'humidity', { quantity: 'ratio', in: '' }, 'relative: "55 %"'),
      opt('--surface <t>', 'trackCelsius', { quantity: 'temperature', in: '°C' }, 'of the track: "32 °C"'),
      TRACK,
      NOTE,
    ],
    example: 'kartwright log weather --temperature "21 °C" --pressure "985 hPa" --station --humidity "55 %"',
  },
  'plug read': {
    about: 'what plug and piston said of the mixture, read after full throttle',
    subject: { key: 'says', help: 'lean, right or rich' },
    options: [NOTE],
    example: 'kartwright log plug-read right',
  },
  'treads probed': {
    about: 'tread temperatures by probe at once after a run, as tyre=inside/middle/outside',
    subject: { key: 'celsius', help: 'like "rear left=62/66/60 °C", any number of them' },
    options: [NOTE],
    example: 'kartwright log treads-probed "rear left=62/66/60 °C" "rear right=64/66/61 °C"',
  },
  'fuel used': {
    about: 'fuel that a run used: filled in less drained',
    subject: { key: 'litres', help: 'with its unit: "4.2 l"', is: { quantity: 'volume', in: 'l' } },
    options: [opt('--laps <n>', 'laps', 'number', 'over how many laps; those of the run before when left out'), NOTE],
    example: 'kartwright log fuel-used "4.2 l"',
  },
  'life expected': {
    about: 'by how many running hours parts of a kind are gone, as you or their maker expect it',
    subject: { key: 'of', help: 'a kind of the kart file' },
    options: [
      opt('--half-hours <n>', 'halfHours', 'number', 'hours by which half of them are gone'),
      opt('--tenth-hours <n>', 'tenthHours', 'number', 'hours by which 1 in 10 is gone'),
      opt('--interval', 'interval', 'yes', 'the tenth is the service interval of the maker'),
      WHY,
    ],
    example: 'kartwright log life-expected chain --half-hours 30 --tenth-hours 12',
  },
  'spares counted': {
    about: 'how many lie in the spares box',
    subject: { key: 'of', help: 'a kind, or a part' },
    options: [opt('--count <n>', 'count', 'number', 'how many')],
    example: 'kartwright log spares-counted chain --count 1',
  },
  laps: {
    about: 'a lap file kept with the record',
    subject: { key: 'file', help: 'the file', is: 'file' },
    options: [
      opt('--name <text>', 'name', 'text', 'what to call it'),
      opt('--laps <n>', 'laps', 'number', 'how many laps are in it'),
    ],
    example: 'kartwright log laps session2.csv --name "Saturday 2" --laps 9',
  },
  note: {
    about: 'anything worth keeping',
    subject: { key: 'text', help: 'the note' },
    options: [opt('--part <name>', 'part', 'text', 'the part it is about')],
    example: 'kartwright log note "left tyre rubs at full lock" --part "front wheel left"',
  },
  struck: {
    about: 'a fact that was wrong; it stays to be seen and counts no more',
    subject: { key: 'fact', help: 'id of the fact' },
    options: [WHY],
    example: 'kartwright log struck demo-0042 --why "wrong corner"',
  },
};
