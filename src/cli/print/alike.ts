/** What else of this kind is on the karts, as plain lines. */
import type { AlikeAnswer } from '../../app/index.ts';
import type { AlikeJoint, AlikeOne } from '../../risk/index.ts';
import { count, heading, wrap } from './wrap.ts';

export function alikeText({ of, kind, retention, parts, joints, why, fact }: AlikeAnswer): string {
  const what = of.joint ?? of.part;
  const twins = joints.filter(({ twin }) => twin);
  const others = joints.filter(({ twin }) => !twin);
  const how = fact === null ? `"${what}"` : `--fact ${fact}`;
  return (
    heading(`what else of this kind: ${what}`) +
    wrap(why === null ? `A ${kind}.` : `A ${kind}: ${why}.`) +
    list(`${count(parts.length, 'other')} of the kind`, parts, one => one.part) +
    (retention === null
      ? ''
      : list(`${count(twins.length, 'joint')} like it`, twins, one => one.joint) +
        list(`${count(others.length, 'other joint')} held by ${retention}`, others, one => one.joint)) +
    (parts.length + joints.length === 0
      ? wrap('Nothing else of this kind is on the karts of this book.')
      : wrap(
          `Make a look at each due: kartwright alike ${how} --look${others.length > 0 ? '; --all for the other joints too' : ''}.`,
        ))
  );
}

function list<T extends AlikeOne | AlikeJoint>(title: string, all: readonly T[], name: (one: T) => string): string {
  if (all.length === 0) return '';
  return (
    wrap(`${title}:`, '  ') + all.map(one => wrap(`${name(one)} (kart ${one.kart}): ${stands(one)}`, '  - ')).join('')
  );
}

function stands({ hours, lastLook, on, items }: AlikeOne): string {
  const look = lastLook ? `last look ${lastLook.at.slice(0, 10)} by ${lastLook.by}` : 'no look on record';
  return `${hours.toFixed(1)} h on record${on ? '' : ', off the kart'}, ${look}${items.length === 0 ? '; its kind names nothing to look at' : ''}`;
}
