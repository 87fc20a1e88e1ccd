/** How the air went today, with its table. */
import { useMemo } from 'preact/hooks';
import type { AirPoint } from '../../prep/index.ts';
import { dayCurve } from '../drawing/day-curve.tsx';
import { PlateFigure } from '../numbers/answered.tsx';
import { dateOf } from '../words/reads.ts';

export function DayAir(props: {
  readonly air: readonly AirPoint[];
  readonly baseline: number | null;
  readonly at: string;
}) {
  const { air, baseline, at } = props;
  const drawn = useMemo(() => {
    const points = air
      .filter(point => dateOf(point.at) === dateOf(at))
      .map(({ at: when, density, band }) => ({ minute: minuteOf(when), density, band }));
    return dayCurve({ points, ...(baseline === null ? {} : { baseline }) });
  }, [air, baseline, at]);
  return drawn ? <PlateFigure drawn={drawn} /> : null;
}

/** Of the day where the page is open, from midnight. */
function minuteOf(instant: string): number {
  const when = new Date(instant);
  return when.getHours() * 60 + when.getMinutes() + when.getSeconds() / 60;
}
