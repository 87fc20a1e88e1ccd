/** Sprockets and speeds for the session to come, from the engine's sheet, the box and the tyre. */
import type { State } from '../../book/index.ts';
import type { Kart } from '../../kart/index.ts';
import { gearing } from '../../numbers/index.ts';
import { formatQuantity } from '../../quantity/index.ts';
import { airRead } from './air.ts';
import type { Missing, TrackAsk, TrackPart } from './model.ts';
import { asked, known, notAsked } from './part.ts';
import type { TrackRecord } from './session.ts';
import { sprockets } from './settings.ts';
import { wheelItem } from './tyre-part.ts';

export function gearPart(kart: Kart, state: State, { coming }: TrackRecord, wanted: TrackAsk['wanted']): TrackPart {
  const on = sprockets(coming.settings);
  const round = circumference(kart, state);
  const { engine, box } = kart;
  const gears = engine?.gears;
  const top = engine?.limiter ?? engine?.torque?.at(-1)?.speed;
  const missing: readonly Missing[] = [
    ...(on
      ? []
      : [
          {
            what: 'The sprockets on the kart are not known.',
            how: 'Write them down as a set-up change: gearing 17/24.',
          },
        ]),
    ...(round
      ? []
      : [
          {
            what: 'The rear tyres were not measured round.',
            how: 'Item circumference of the rear wheels, or the kart file.',
          },
        ]),
    ...(top
      ? []
      : [
          {
            what: 'No engine speed is known to reckon with.',
            how: 'Write the limiter into the kart file: engine: limiter: 13500 rpm.',
          },
        ]),
    ...(wanted
      ? []
      : [
          {
            what: 'Which engine speed is wanted at which speed was not said.',
            how: 'Read both at the end of the longest straight.',
          },
        ]),
  ];
  if (!on || !round || !top) return notAsked(gearing, missing);
  const air = airRead(coming.weather);
  const owned = { front: box?.frontSprockets ?? [], rear: box?.rearSprockets ?? [] };
  return asked(gearing, {
    question: {
      drive: gears ? 'gearbox' : 'direct',
      ...known({ 'primary ratio': engine?.primary?.toString(), gears: gears?.join(' ') }),
      'front sprocket': String(on.front),
      'rear sprocket': String(on.rear),
      'rolling circumference': round.text,
      'engine speed': top.text,
      ...(wanted && {
        'wanted engine speed': wanted.engineSpeed,
        'wanted speed': wanted.speed,
        ...(gears && { 'wanted gear': String(gears.length) }),
        ...(owned.front.length > 0 && { 'front sprockets owned': owned.front.join(' ') }),
        ...(owned.rear.length > 0 && { 'rear sprockets owned': owned.rear.join(' ') }),
      }),
      ...(engine?.torque && engine.limiter
        ? {
            limiter: engine.limiter.text,
            'torque curve': engine.torque.map(({ speed, torque }) => ({ at: speed.text, torque: torque.text })),
          }
        : {}),
      ...dragOf(kart, air?.density),
    },
    from: [`${on.front}/${on.rear} on the kart. ${round.from}`],
    missing,
    lead: answer => {
      const choice = answer.figures['choice 1']?.text;
      const last = answer.figures[`speed in gear ${gears?.length ?? 1}`]?.text ?? answer.figures.speed?.text;
      return [
        { label: 'on the kart', text: `${on.front}/${on.rear}` },
        ...(choice === undefined ? [] : [{ label: 'nearest pair in the box', text: choice }]),
        ...(last === undefined ? [] : [{ label: `at ${top.text}`, text: last }]),
      ];
    },
  });
}

/** From the kart file, else the mean of what was read round both rear tyres. */
function circumference(kart: Kart, state: State): { readonly text: string; readonly from: string } | undefined {
  const filed = kart.dimensions['rolling circumference'];
  if (filed) return { text: filed.text, from: `${filed.text} round, from the kart file.` };
  const read = (['rear left', 'rear right'] as const).flatMap(tyre => {
    const item = wheelItem(kart, tyre, 'circumference');
    const last = item && state.items[item.id]?.readings.at(-1)?.reading;
    return last ? [last.si] : [];
  });
  if (read.length === 0) return undefined;
  const mean = formatQuantity(read.reduce((sum, si) => sum + si, 0) / read.length, 'mm', 0);
  return { text: `${mean} ± ${GROWTH} mm`, from: `${mean} round, as the rear tyres were read with a tape.` };
}
/** A tape round a tyre that stands is not what it rolls under load at speed; common practice. */
const GROWTH = 8;

/** Only where all four are known: half a drag is none. */
function dragOf({ dimensions }: Kart, density: number | undefined) {
  const [mass, area, rolling] = [
    dimensions['mass with driver'],
    dimensions['drag area'],
    dimensions['rolling resistance'],
  ];
  if (!mass || !area || !rolling || density === undefined) return {};
  return {
    mass: mass.text,
    'drag area': area.text,
    'rolling resistance': rolling.text,
    'air density': `${density.toPrecision(4)} kg/m³`,
  };
}
