/** Four scales in plan: what stands on each, and the middle of the mass, now and with the ballast. */
import { Centre, Dimension, Extension, Label } from '../../drawing/lines.tsx';
import { platesWords } from '../../words/plates.ts';
import { type Asked, askedSize, type DrawPlate, figureOf, saidText, wordsOf } from './asked.ts';
import { MIDDLE, PLAN, PlanPlate, WHEELS, type Wheel } from './plan.tsx';

const share = (part: number, whole: number): string =>
  part > 0 && whole > 0 ? `${((100 * part) / whole).toFixed(1)} %` : '';

export const scalesPlate: DrawPlate = asked => {
  const total = figureOf(asked, 'total');
  if (asked.answer.figures['front share'] === undefined) return undefined;
  const shareOf = (wheel: Wheel): string => share(askedSize(asked, wheel, 'mass'), total);
  const centre = centreOf(asked);
  const ballast = Object.keys(asked.answer.figures).filter(name => /^ballast (?!in all)/.test(name));
  const title = platesWords.cornerWeightsFromAbove(
    WHEELS.map(wheel => `${wheel} ${saidText(asked, wheel)}`).join(', '),
    wordsOf(asked, 'front share'),
    wordsOf(asked, 'left share'),
    wordsOf(asked, 'cross share'),
  );
  return {
    title,
    head: ['', 'now', platesWords.withBallast],
    rows: [
      ...WHEELS.map(wheel => [wheel, `${saidText(asked, wheel)}, ${shareOf(wheel)}`, '']),
      ...['front share', 'left share', 'cross share'].map(name => [
        name,
        wordsOf(asked, name),
        asked.answer.figures[`${name} with ballast`]?.text ?? '',
      ]),
      ['total', wordsOf(asked, 'total'), asked.answer.figures['total with ballast']?.text ?? ''],
      ...['centre forward of rear axle', 'centre left of middle'].map(name => [name, wordsOf(asked, name), '']),
      ...ballast.map(name => [name, '', wordsOf(asked, name)]),
    ],
    drawing: (
      <PlanPlate title={title} height={PLAN.height + 46} says={wheel => [saidText(asked, wheel), shareOf(wheel)]}>
        {centre && <CentreOfMass asked={asked} centre={centre} />}
        {(['front', 'left', 'cross'] as const).map((name, n) => (
          <g key={name}>
            <Label x={58 + n * 114} y={PLAN.height + 18} text={name} look="quiet" />
            <Label x={58 + n * 114} y={PLAN.height + 36} text={wordsOf(asked, `${name} share`)} look="strong" />
          </g>
        ))}
      </PlanPlate>
    ),
  };
};

/** Where the middle of the mass lies on the sheet; undefined without wheelbase and tracks. */
function centreOf(asked: Asked) {
  const wheelbase = askedSize(asked, 'wheelbase', 'length');
  const forward = figureOf(asked, 'centre forward of rear axle');
  const left = figureOf(asked, 'centre left of middle');
  const track = askedSize(asked, 'rear track', 'length');
  if (![wheelbase, forward, left, track].every(Number.isFinite)) return undefined;
  return {
    x: MIDDLE - (left / (track / 2)) * PLAN.out,
    y: PLAN.rear - (forward / wheelbase) * (PLAN.rear - PLAN.front),
  };
}

function CentreOfMass({ asked, centre }: { readonly asked: Asked; readonly centre: { x: number; y: number } }) {
  const x = MIDDLE + 56;
  const aside = figureOf(asked, 'centre left of middle');
  return (
    <g>
      <Extension from={{ x: centre.x, y: centre.y }} to={{ x: x + 6, y: centre.y }} />
      <Dimension from={{ x, y: PLAN.rear }} to={{ x, y: centre.y }} />
      <Label
        x={MIDDLE + 64}
        y={(centre.y + PLAN.rear) / 2 - 12}
        anchor="start"
        text={wordsOf(asked, 'centre forward of rear axle')}
      />
      <Centre x={centre.x} y={centre.y} />
      <Label
        x={MIDDLE - 62}
        y={centre.y + 4}
        anchor="end"
        text={`${wordsOf(asked, 'centre left of middle').replace('-', '')} ${aside < 0 ? 'right' : 'left'}`}
      />
    </g>
  );
}
