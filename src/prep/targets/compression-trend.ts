/** What the readings of compression on this piston say together: the rule of one tenth. */
import type { Mark, State } from '../../book/index.ts';
import type { Item, Kart } from '../../kart/index.ts';
import { type CompressionTrend, compressionTrend } from '../../numbers/index.ts';
import { formatQuantity } from '../../quantity/index.ts';

/** Readings taken as the item asks (hot, throttle open) since a part that disturbs it was last renewed; none: nothing is said. */
export function compressionSaid(kart: Kart, state: State, item: Item): readonly string[] {
  if (item.measure?.number !== 'compression-trend') return [];
  const renewed = Object.values(kart.parts).flatMap(part => {
    const fresh = part.disturbs.includes(item.id) ? state.parts[part.id]?.fresh : undefined;
    return fresh ? [fresh] : [];
  });
  const since = renewed.reduce<Mark | undefined>(
    (last, mark) => (last && last.pos > mark.pos ? last : mark),
    undefined,
  );
  const readings = (state.items[item.id]?.readings ?? []).filter(({ pos }) => pos > (since?.pos ?? 0));
  const unit = readings.at(-1)?.reading.unit ?? 'bar';
  const trend = compressionTrend(
    readings.map(({ minutes, reading }) => ({
      ran: (minutes - (since?.minutes ?? 0)) * 60,
      pressure: reading.si,
      ...(reading.resolution === undefined ? {} : { half: reading.resolution }),
      gauge: reading.instrument ?? '',
      hot: true,
      open: true,
    })),
  );
  return trend.kind === 'not known' ? [] : [inWords(trend, unit)];
}

type Known = Exclude<CompressionTrend, { kind: 'not known' }>;

function inWords({ kind, best, last, fall, used, until }: Known, unit: string): string {
  const said = (pascal: number): string => formatQuantity(pascal, unit, 1);
  const fallen = `${(100 * fall).toFixed(1)} % below the best of ${used} readings (${said(last.pressure)} after ${said(best.pressure)})`;
  if (kind === 'due') return `Last reading ${fallen}: over a tenth, open the top end.`;
  if (kind === 'cannot tell')
    return `Last reading ${fallen}: it may be the tenth at which the top end is opened. Read again.`;
  const then =
    until !== undefined && Number.isFinite(until)
      ? ` By the line through them that is at ${(until / 3600).toFixed(0)} h on this piston.`
      : '';
  return `Last reading ${fallen}; at a tenth the top end is opened.${then}`;
}
