import { Glyph } from '../glyph.tsx';
import { dateOf } from '../words.ts';
import type { JointKnown } from './known.ts';

/** How a part is held: each joint with its retentions, its torque with the source, and whether it is made. */
export function JointRows({ joints }: { readonly joints: readonly JointKnown[] }) {
  if (joints.length === 0) return null;
  return (
    <section class="group">
      <h2>
        How it is held <span>{joints.length}</span>
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
      ? torque?.min.text
      : `${torque.min.text} to ${torque.max.text}`;
  return (
    <li>
      <Glyph sign={opened ? 'open' : made ? 'done' : 'not known'} />
      <div>
        <b>{joint.name}</b> <span class="soft">{what.filter(Boolean).join(' ')}</span>
        <p>
          Held by {joint.retention}; {joint.second === undefined ? 'no second retention' : `second: ${joint.second}`}.
        </p>
        {torque && (
          <p>
            {range} ({torque.source})
          </p>
        )}
        <p>
          {opened
            ? `Opened on ${dateOf(opened.at)} by ${opened.by} and not made since`
            : made
              ? `Made on ${dateOf(made.at)} by ${made.by}`
              : 'No record that it was made'}
        </p>
      </div>
      <span class="side">{opened ? 'open' : made ? 'made' : 'not known'}</span>
    </li>
  );
}
