/** What doing a step writes into the book. */
import type { Payload, Reading } from '../book/index.ts';
import type { Step } from './model.ts';

/**
 * The fact of a step that went well; a fail or "could not be done" is a `checked` of its own, written by the face.
 *
 * @param how a find was mended
 */
export const passOf = (step: Step, reading?: Reading, how = 'as planned'): Payload => {
  const taken = reading ? { reading } : {};
  switch (step.action) {
    case 'take-off':
      return { kind: 'taken off', part: step.on };
    case 'refit':
      return { kind: 'fitted', part: step.on, ...(step.fresh ? { fresh: true } : {}) };
    case 'posture':
      if (step.posture === 'any') throw new Error(`passOf: step ${step.key} must name a posture, got any`);
      return { kind: 'put on', posture: step.posture };
    case 'mend':
      if (step.mends === null) throw new Error(`passOf: step ${step.key} must name a find, got none`);
      return { kind: 'mended', found: step.mends, how };
    default: {
      const secondLook = step.action === 'second-look' ? { secondLook: true } : {};
      if (step.writes === 'fitted') return { kind: 'fitted', part: step.on, fresh: true };
      if (step.writes === 'made' && step.joint) return { kind: 'made', joint: step.joint, ...taken };
      if (!step.item) throw new Error(`passOf: step ${step.key} must name an item, got none`);
      return { kind: 'checked', item: step.item, result: 'pass', ...secondLook, ...taken };
    }
  }
};
