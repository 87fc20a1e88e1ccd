/** Two speeds over the same lap, and under them the time that one is behind the other, all of the same part of the lap. */
import type { Trace } from './lap-plots.tsx';
import { LapTraces } from './traces.tsx';

type Along = Trace['x'];
type Drawn = { readonly name: string; readonly speed: Along }; // m/s

export function SpeedAndTime(props: {
  readonly name: string;
  readonly at: Along; // m
  readonly dashed: Drawn;
  readonly thick: Drawn;
  readonly speeds: string; // what the upper drawing shows, in words
  /** s, of the thick one. */
  readonly behind: { readonly title: string; readonly unit: string; readonly y: Along };
}) {
  const { name, at, dashed, thick, speeds, behind } = props;
  return (
    <LapTraces
      name={name}
      plots={[
        {
          title: speeds,
          unit: 'km/h',
          least: 5,
          traces: [
            { name: dashed.name, look: 'dashed', x: at, y: kmh(dashed.speed) },
            { name: thick.name, look: 'signal', x: at, y: kmh(thick.speed) },
          ],
        },
        {
          title: behind.title,
          unit: behind.unit,
          least: 0.1,
          height: 110,
          zero: true,
          traces: [{ name: '', look: 'plain', x: at, y: behind.y }],
        },
      ]}
    />
  );
}

const kmh = (speed: Along): Along => speed.map(each => each * 3.6);
