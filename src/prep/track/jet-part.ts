/** The main jet for the air of the session to come, from the sessions whose plug was read. */
import type { Kart } from '../../kart/index.ts';
import { type Answer, carburation } from '../../numbers/index.ts';
import { type AirRead, airRead } from './air.ts';
import { NO_WEATHER } from './air-part.ts';
import type { Missing, TrackPart } from './model.ts';
import { asked, known, leads, notAsked } from './part.ts';
import type { TrackRecord, TrackSession } from './session.ts';
import { mainJet, ratioOf } from './settings.ts';

type Logged = { readonly session: TrackSession; readonly jet: number; readonly air: AirRead };

/** Sessions of which jet and air are known, oldest first. */
const logged = (sessions: readonly TrackSession[]): readonly Logged[] =>
  sessions.flatMap(session => {
    const jet = mainJet(session.settings);
    const air = session.plug && airRead(session.weather);
    return jet !== undefined && air ? [{ session, jet, air }] : [];
  });

/** The last session whose plug was read as right: its jet is what the next one is reckoned from. */
export const lastRight = (sessions: readonly TrackSession[]): Logged | undefined =>
  logged(sessions).findLast(({ session }) => session.plug?.says === 'right');

export function jetPart(kart: Kart, { sessions, coming }: TrackRecord): TrackPart {
  const log = logged(sessions);
  const right = lastRight(sessions);
  const air = airRead(coming.weather);
  if (!right || !air)
    return notAsked(carburation, [...(air ? [] : [NO_WEATHER]), ...(right ? [] : noneRight(sessions))]);
  const good = log.filter(({ session }) => session.plug?.says === 'right').map(({ jet }) => jet);
  const [oilThen, oilNow] = [ratioOf(right.session.mixed), ratioOf(coming.mixed)];
  const onIt = mainJet(coming.settings);
  return asked(carburation, {
    question: {
      jet: String(right.jet),
      'numbered by': kart.engine?.jetsNumberedBy ?? 'not known',
      'air then': right.air.question,
      'air now': air.question,
      ...known({ 'jets in the box': kart.box?.mainJets.length ? kart.box.mainJets.join(' ') : undefined }),
      'smallest good jet': String(Math.min(...good)),
      ...(oilThen && oilNow ? { 'oil then': oilThen, 'oil now': oilNow } : {}),
      log: log.map(({ session, jet, air: { density, dryDensity } }) => ({
        jet: String(jet),
        density: `${density.toPrecision(6)} kg/m³`,
        'dry-air density': `${dryDensity.toPrecision(6)} kg/m³`,
        plug: session.plug?.says ?? 'not read',
      })),
    },
    from: [
      `Main jet ${right.jet} was read as right in ${right.session.outing.label}, at ${right.air.density.toFixed(3)} kg/m³.`,
      ...(onIt !== undefined && onIt !== right.jet ? [`On the kart now: ${onIt}.`] : []),
    ],
    missing: kart.box?.mainJets.length
      ? []
      : [{ what: 'The jets in the box are not known.', how: 'Write them into the kart file under box: main jets.' }],
    lead: answer =>
      leads(answer, {
        'jet to fit': 'main jet',
        'jet by theory': 'by theory',
        'jet by the paddock rule': 'by the paddock rule',
      }),
    warning: answer => leaner(answer, right.jet, onIt),
  });
}

/** Said plainly whenever an answer, or what is on the kart, goes leaner than what was right. */
function leaner({ figures }: Answer, right: number, onIt: number | undefined): string | null {
  const fit = figures['jet to fit']?.si;
  const wanted = fit ?? Math.ceil(figures['richest of the band']?.si ?? Number.NaN);
  const running = onIt ?? right;
  if (running < wanted)
    return `Main jet ${running} is leaner than this air asks for: at full throttle the engine can seize. ${
      fit === undefined ? `No jet in the box is rich enough: get ${wanted} or more` : `Fit ${fit}`
    } before it runs.`;
  if (fit !== undefined && fit < right)
    return `Main jet ${fit} is leaner than the ${right} that was right, and too lean seizes the engine. One size, a few laps with a hand at the clutch, then read plug and piston.`;
  return null;
}

const noneRight = (sessions: readonly TrackSession[]): readonly Missing[] => [
  sessions.some(({ plug }) => plug?.says === 'right')
    ? {
        what: 'No session with a plug read as right has its main jet and its weather written down.',
        how: 'Write down the main jet as a set-up change, and read the weather before each session.',
      }
    : {
        what: 'No session has a plug that was read as right: it is not known which jet is.',
        how: 'Begin with the engine builder’s jet or a larger one, read plug and piston after full throttle, and write down what they say.',
      },
];
