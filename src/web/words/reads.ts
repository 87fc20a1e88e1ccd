/** How a moment, a length of time and a fact read on the page. */
import type { Fact, FactOf } from '../../book/index.ts';
import type { Step } from '../../prep/index.ts';
import { own } from '../choice/choice.ts';
import { dateOf } from '../choice/dates.ts';
import { aimsWords } from './aims.ts';
import { readAtTrackWords } from './read-at-track.ts';

export { dateOf, dayOf, timeOf, weekdayOf } from '../choice/dates.ts';

export const readsWords = {
  span: spanText,
  actions: {
    'take-off': 'Take off',
    refit: 'Put back',
    clean: 'Clean',
    look: 'Look',
    measure: 'Measure',
    torque: 'Torque',
    replace: 'Replace',
    set: 'Set',
    lubricate: 'Lubricate',
    secure: 'Secure',
    'function-test': 'Try it',
    'second-look': 'Second look',
    posture: 'Kart position',
    mend: 'Mend',
  } satisfies Readonly<Record<Step['action'], string>>,
  /** What a person did when they say it is done. */
  did: {
    'take-off': 'It is off',
    refit: 'It is on',
    posture: 'It stands so',
    torque: 'Made and holds',
    secure: 'Made and holds',
    replace: 'Replaced',
    mend: 'It is mended',
    'second-look': 'I looked: it holds',
  } as Partial<Readonly<Record<Step['action'], string>>>,
  holds: 'It holds',
  newOne: (part: string) => `new ${part}`,
  fact: factText,
};

export const spanOf = (minutes: number): string => readsWords.span(minutes);
export const actionOf = (step: Step): string => readsWords.actions[step.action];
export const didOf = (step: Step): string => readsWords.did[step.action] ?? readsWords.holds;
/** One line for the record: what happened, without who and when. */
export const factWords = (fact: Fact): string => readsWords.fact(fact);

/** 95 → '1 h 35 min'. */
function spanText(minutes: number): string {
  const whole = Math.round(minutes);
  const hours = Math.floor(whole / 60);
  const rest = whole - hours * 60;
  if (hours === 0) return `${rest} min`;
  return rest === 0 ? `${hours} h` : `${hours} h ${rest} min`;
}

export const capital = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1);

/** The step without the word its action says already. */
export const titleOf = (step: Step): string => {
  if (step.action === 'second-look') return step.title.replace(/^Second look: /, '');
  if (step.item !== null || step.part === null) return step.title;
  return capital(step.fresh ? readsWords.newOne(step.part) : step.part);
};

/** The shape that goes with an entry of the record. */
export function factSign(fact: Fact): 'defect' | 'off' | 'open' | 'done' | 'note' {
  if (fact.kind === 'found' || fact.kind === 'failed' || (fact.kind === 'checked' && fact.result === 'fail'))
    return 'defect';
  if (fact.kind === 'taken off') return 'off';
  if (fact.kind === 'loosened') return 'open';
  return fact.kind === 'checked' || fact.kind === 'made' || fact.kind === 'fitted' || fact.kind === 'mended'
    ? 'done'
    : 'note';
}

function factText(fact: Fact): string {
  switch (fact.kind) {
    case 'checked': {
      const look = fact.secondLook ? ', second look' : '';
      return `${fact.item}: ${fact.result}${look}${reading(fact)}${why(fact)}`;
    }
    case 'made':
      return `${fact.joint} made${fact.secondLook ? ', second look' : ''}${reading(fact)}${why(fact)}`;
    case 'set':
      return `${fact.item} set${reading(fact)}${why(fact)}`;
    case 'taken off':
      return `${fact.part} taken off${why(fact)}`;
    case 'fitted':
      return `${fact.fresh ? 'Another ' : ''}${fact.part} fitted${fact.serial ? `, serial ${fact.serial}` : ''}${carried(fact)}`;
    case 'moved':
      return `${fact.part} moved to ${fact.to}`;
    case 'loosened':
      return `${fact.joint} opened${why(fact)}`;
    case 'ran': {
      const where = [fact.event, fact.session].filter(Boolean).join(', ');
      const hit = fact.impact ? `, ${fact.impact.severity} at the ${fact.impact.corner}` : '';
      return `Ran ${spanOf(fact.minutes)}${fact.laps === undefined ? '' : `, ${fact.laps} laps`}${fact.wet ? ', wet' : ''}${hit}${where ? ` (${where})` : ''}`;
    }
    case 'found':
      return `Found on ${fact.part}: ${fact.defect} (${fact.grade})`;
    case 'failed':
      return `Failed while it ran: ${fact.joint ?? fact.part}, ${fact.how}`;
    case 'look asked':
      return `Look asked for at ${fact.items.join(', ')}: ${fact.why}`;
    case 'mended':
      return `Mended: ${fact.how}`;
    case 'event':
      return `Event ${fact.event}, ${dateOf(fact.from)}, ${spanOf(fact.minutes)} of running expected`;
    case 'put on':
      return `Kart put on: ${fact.posture}`;
    case 'set-up':
      return `Set-up: ${Object.entries(fact.changes)
        .map(([k, v]) => `${k} ${v}`)
        .join(', ')}${why(fact)}`;
    case 'tyres':
      return `Tyres: ${fact.set}${fact.note ? `, ${fact.note}` : ''}`;
    case 'fuel mixed':
      return `Fuel mixed: ${fact.litres} L with ${fact.oilMillilitres} mL of oil`;
    case 'weather':
    case 'plug read':
    case 'treads probed':
    case 'fuel used':
      return readAtTrackWords.fact(fact);
    case 'life expected':
      return `Expected of a ${fact.of}: ${goneWords(fact)}${why(fact)}`;
    case 'spares counted':
      return `In the spares box: ${fact.count} × ${fact.of}`;
    case 'laps':
      return `Laps imported: ${fact.name}, ${fact.laps} laps`;
    case 'note':
      return `Note${fact.part ? ` on ${fact.part}` : ''}: ${fact.text}`;
    case 'released':
      return `Signed by ${fact.signer}: ${fact.verdict}, ${fact.open.length} open`;
    case 'struck':
      return `Struck an entry: ${fact.why}`;
    case 'redacted':
      return `Taken out: what named ${fact.as}, of ${fact.facts.length} entries`;
    case 'kart filed':
      return 'Kart file filed';
  }
}

const goneWords = ({ halfHours: half, tenthHours: tenth, interval }: FactOf<'life expected'>): string =>
  [
    ...(half === undefined ? [] : [`half gone by ${half} h`]),
    ...(tenth === undefined ? [] : [interval ? `service interval ${tenth} h` : `1 in 10 gone by ${tenth} h`]),
  ].join(', ');
const carried = ({ carriedMinutes: run }: FactOf<'fitted'>): string =>
  run === undefined ? '' : `, ${spanOf(run)} of running on it`;
const reading = (fact: { readonly reading?: { readonly text: string } | undefined }): string =>
  fact.reading ? `, ${asTyped(fact.reading.text)}` : '';

/** In the unit that was chosen, with what was typed beside it where that is another. */
export function asTyped(text: string): string {
  const said = own(text);
  return said === text ? text : aimsWords.typedAs(said, text);
}
const why = (fact: { readonly why?: string | undefined }): string => (fact.why ? `: ${fact.why}` : '');
