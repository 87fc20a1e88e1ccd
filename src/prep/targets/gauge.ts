import type { Instrument } from '../../kart/index.ts';
import type { Gauge } from '../../numbers/index.ts';

/** How fine and how true an instrument reads at a value [SI]; its scale may be known as a share of the reading. */
export const gaugeOf = ({ scaleError, ends }: Instrument, si: number, resolution: number): Gauge => ({
  resolution,
  scaleError: scaleError.dimension === 'ratio' ? scaleError.si * Math.abs(si) : scaleError.si,
  ends,
});
