/** The kart as it weighs and springs, in trade words: asked about wheel loads and about the front end. */
import { z } from 'zod';
import { type Asked, incomplete, notAbove, outside, siOf, unusual, wrong } from '../asked.ts';
import { frameFromSeries, type Springs, stiffnessFromShim } from '../front-end/warp.ts';
import { type InputProblem, quantity } from '../subject.ts';
import { type Body, G } from './statics.ts';

/** Fields of the body: all that the loads of a standing kart need. */
export const bodyFields = {
  mass: quantity('mass', 'kart with its driver, ready to run', '181 kg'),
  wheelbase: quantity('length', 'kingpin line to the middle of the rear axle', '1045 mm'),
  'front share': quantity('ratio', 'share of the weight on the front wheels, level, driver seated', '43 %'),
  'cg height': quantity('length', 'height of the centre of mass over the road', '240 mm'),
  'cg height front': quantity('length', 'height of the part of the mass that stands on the front', '240 mm').optional(),
  'cg height rear': quantity(
    'length',
    'height of the part of the mass that stands on the rear; the driver sits here',
    '240 mm',
  ).optional(),
  'cg left': quantity('length', 'centre of mass left of the middle; right of it below 0', '0 mm').optional(),
  'front contact track': quantity('length', 'middle to middle of the front tyres, not the overall width', '1080 mm'),
  'rear contact track': quantity('length', 'middle to middle of the rear tyres, not the overall width', '1170 mm'),
  'front tyre stiffness': quantity('stiffness', 'of one front tyre, at running pressure', '90 N/mm'),
  'rear tyre stiffness': quantity('stiffness', 'of one rear tyre, at running pressure', '110 N/mm'),
};

/** How stiff the frame is in twist: measured on a bench, or with a shim on the scales; neither for a rigid frame. */
export const twistFields = {
  'frame torque per degree': quantity(
    'torque',
    'torque that twists the bare frame by one degree',
    '150 N·m',
  ).optional(),
  shim: quantity('length', 'thickness laid under one front wheel on its scale', '3 mm').optional(),
  'shim gain': quantity('mass', 'what that scale gains by it; mean of up and down', '1.76 kg').optional(),
};

const HEIGHTS = ['cg height', 'cg height front', 'cg height rear'];
const POSITIVE = [
  'mass',
  'wheelbase',
  ...HEIGHTS,
  'front contact track',
  'rear contact track',
  'front tyre stiffness',
  'rear tyre stiffness',
  'frame torque per degree',
  'shim',
  'shim gain',
];
const DEGREE = Math.PI / 180;

export function bodyOf(input: Asked): Body {
  const height = siOf(input, 'cg height');
  const wheelbase = siOf(input, 'wheelbase');
  return {
    mass: siOf(input, 'mass'),
    wheelbase,
    ahead: siOf(input, 'front share') * wheelbase,
    left: siOf(input, 'cg left', 0),
    heightFront: siOf(input, 'cg height front', height),
    heightRear: siOf(input, 'cg height rear', height),
  };
}

/** Springs with the frame as measured; rigid when nothing was. */
export function springsOf(input: Asked): Springs {
  const tyres = {
    frontTyre: siOf(input, 'front tyre stiffness'),
    rearTyre: siOf(input, 'rear tyre stiffness'),
    frontTrack: siOf(input, 'front contact track'),
    rearTrack: siOf(input, 'rear contact track'),
  };
  if (input.shim !== undefined) return { ...tyres, frame: frameFromSeries(shimmed(input), tyres) };
  return { ...tyres, frame: siOf(input, 'frame torque per degree', Number.POSITIVE_INFINITY) / DEGREE };
}

/** Stiffness of frame and tyres together as the shim showed it [N·m/rad]. */
export const shimmed = (input: Asked): number =>
  stiffnessFromShim(siOf(input, 'shim gain') * G, siOf(input, 'shim'), siOf(input, 'front contact track'));

/** What cannot be about the body and its springs; says nothing of what was not given. */
export function bodyProblems(input: Asked): readonly InputProblem[] {
  const found = [
    ...notAbove(input, POSITIVE),
    ...outside(input, ['front share'], [0.01, 0.99], '%', 'front scales together over all four: about 43 %'),
    ...incomplete(input, ['shim', 'shim gain'], 'the stiffness from a shim'),
    ...heightProblems(input),
  ];
  if (input.shim !== undefined && input['frame torque per degree'] !== undefined)
    found.push(
      wrong('frame torque per degree', 'one way of knowing the stiffness', 'two', 'take it out, or take out the shim'),
    );
  const track = Math.min(siOf(input, 'front contact track'), siOf(input, 'rear contact track'));
  if (Math.abs(siOf(input, 'cg left', 0)) >= track / 2)
    found.push(
      wrong('cg left', 'a place between the wheels', textOf(input, 'cg left'), 'measure from the middle of the kart'),
    );
  if (found.length === 0 && input.shim !== undefined && !(springsOf(input).frame > 0))
    found.push(
      wrong(
        'shim gain',
        'less than tyres on a rigid frame would give',
        textOf(input, 'shim gain'),
        'shim one front wheel only, wheels free to settle; weigh up and down; check the tyre stiffness and the shim',
      ),
    );
  return found;
}

const textOf = (input: Asked, key: string): string => {
  const value = input[key];
  return typeof value === 'object' ? value.text : 'nothing';
};

function heightProblems(input: Asked): readonly InputProblem[] {
  const found = incomplete(input, ['cg height front', 'cg height rear'], 'heights front and rear apart');
  if (found.length > 0 || input['cg height front'] === undefined || input['front share'] === undefined) return found;
  const share = siOf(input, 'front share');
  const whole = share * siOf(input, 'cg height front') + (1 - share) * siOf(input, 'cg height rear');
  if (Math.abs(whole - siOf(input, 'cg height', whole)) <= 0.001) return [];
  return [
    wrong(
      'cg height',
      `${(whole * 1000).toFixed(0)} mm, the mean of front and rear by their weight`,
      textOf(input, 'cg height'),
      'correct one of the three heights',
    ),
  ];
}

/** Values that can be, outside what a kart usually is. */
export const bodyUnusual = (input: Asked): readonly string[] => [
  ...unusual(input, ['mass'], [60, 300], 'kg'),
  ...unusual(input, ['wheelbase'], [0.9, 1.3], 'mm'),
  ...unusual(input, ['front share'], [0.35, 0.55], '%'),
  ...unusual(input, HEIGHTS, [0.1, 0.4], 'mm'),
  ...unusual(input, ['front contact track', 'rear contact track'], [0.8, 1.4], 'mm'),
  ...unusual(input, ['front tyre stiffness', 'rear tyre stiffness'], [30_000, 300_000], 'N/mm'),
  ...unusual(input, ['frame torque per degree'], [50, 500], 'N·m'),
];

export const schema = z.strictObject({
  ...bodyFields,
  ...twistFields,
  'lateral acceleration': quantity('acceleration', 'across the kart, 0 or more', '1 g'),
  turn: z.enum(['left', 'right']).optional(),
  braking: quantity('acceleration', 'slowing down; below 0 speeding up', '0 m/s²').optional(),
  warp: quantity(
    'length',
    'front contacts apart in height from steering, inner one pushed down; from the subject front-end',
    '10.5 mm',
  ).optional(),
});
export type Input = z.output<typeof schema>;

export const motionProblems = (input: Asked): readonly InputProblem[] => [
  ...notAbove(input, ['lateral acceleration'], true),
  ...outside(input, ['braking'], [-3 * G, 3 * G], 'g0', 'a tyre gives 1 to 2 g: write for example "0.8 g"'),
  ...outside(input, ['lateral acceleration'], [0, 5 * G], 'g0', 'a tyre gives 1 to 2.5 g: write for example "1.6 g"'),
  ...outside(input, ['warp'], [-0.1, 0.1], 'mm', 'warp is a matter of millimetres: write for example "10.5 mm"'),
];
