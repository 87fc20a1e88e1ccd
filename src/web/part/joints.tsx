import { own } from '../choice/choice.ts';
import { Glyph } from '../glyph.tsx';
import { partWords } from '../words/part.ts';
import { dateOf } from '../words/reads.ts';
import type { JointKnown } from './known.ts';

/** How a part is held: each joint with its retentions, its torque with the source, and whether it is made. */
export function JointRows({ joints }: { readonly joints: readonly JointKnown[] }) {
  if (joints.length === 0) return null;
  return (
    <section class="group">
      <h2>
        {partWords.howItIsHeld} <span>{joints.length}</span>
      </h2>
      <ul class="rows">
        {joints.map(known => (
          <JointRow key={known.joint.id} known={known} />
        ))}
      </ul>
    </section>
  );
}

function JointRow({ known: { joint, made, opened } }: { readonly known: JointKnown }) {
  const { torque } = joint;
  const what = [joint.count > 1 ? `${joint.count} ×` : '', joint.kind, joint.thread, joint.propertyClass];
  const range =
    torque === undefined || torque.min.si === torque.max.si
      ? own(torque?.min.text ?? '')
      : own(`${torque.min.text} to ${torque.max.text}`);
  return (
    <li>
      <Glyph sign={opened ? 'open' : made ? 'done' : 'not known'} />
      <div>
        <b>{joint.name}</b> <span class="soft">{what.filter(Boolean).join(' ')}</span>
        <p>
          {partWords.held(
            joint.retention,
            joint.second === undefined ? partWords.noSecondRetention : `second: ${joint.second}`,
          )}
        </p>
        {torque && (
          <p>
            {range} ({torque.source})
          </p>
        )}
        <p>
          {opened
            ? partWords.opened(dateOf(opened.at), opened.by)
            : made
              ? partWords.madeBy(dateOf(made.at), made.by)
              : partWords.noRecordThatItWas}
        </p>
      </div>
      <span class="side">{opened ? partWords.open : made ? partWords.jointMade : partWords.notKnown}</span>
    </li>
  );
}
