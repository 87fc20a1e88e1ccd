/** A link that is enough, as a mechanic says it. */
import type { JointLook } from './joint-look.ts';
import type { Link } from './model.ts';

export function sentenceOf(link: Link, look: JointLook | undefined, hazard: string): string {
  const between = `between you and ${hazard}`;
  if (look === undefined)
    return link.sort === 'shared'
      ? `${capital(link.says.split(':')[0] ?? '')} stands ${between}: ${link.says.split(': ')[1]}.`
      : `The ${link.part} itself stands ${between}: nothing else does its work.`;
  const { joint, first, second, notCounted } = look;
  if (link.sort === 'one hand') {
    const what = second?.looked.endsWith('two people') ? 'What takes both at once' : 'One pair of hands';
    return `${what} stands ${between}: ${joint.part}, ${joint.name}, ${first.text} and ${second?.text}, ${second?.looked}.`;
  }
  const alone =
    joint.count === 1 ? `One ${first.text} stands ${between}` : `Nothing but ${first.text} stands ${between}`;
  const where = joint.count === 1 ? `${joint.part}, ${joint.name}` : `${joint.part}, ${joint.count} × ${joint.name}`;
  return `${alone}: ${where}.${notCounted === undefined ? '' : ` Not counted: ${notCounted}.`}`;
}

const capital = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1);
