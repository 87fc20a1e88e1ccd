/** The door for facts from outside: read, brought up to today's format, found whole, or refused with the reason (SPEC B5, B22). */
import { FACT_FORMAT, FACT_KINDS, type Fact, fact } from './fact.ts';
import { isProblem, type Problem } from './problem.ts';
import { fitsHash, hashOf, nowFits, provable } from './seal.ts';

/**
 * A fact as parsed from JSON, held against its own hash as it was written. Facts of formats 1 and 2 say the same things and differ in how they
 * are sealed, so none is turned into another; a format that says things otherwise will need a step here that stays for ever.
 */
export function upcast(raw: unknown): Fact | Problem {
  if (typeof raw !== 'object' || raw === null || Array.isArray(raw)) {
    return notAFact(`a fact must be a JSON object, got ${Array.isArray(raw) ? 'a list' : JSON.stringify(raw)}`);
  }
  const written = raw as Readonly<Record<string, unknown>>;
  const id = typeof written.id === 'string' ? { fact: written.id } : {};
  const format = written.v;
  if (typeof format !== 'number' || !Number.isInteger(format) || format < 1) {
    return {
      ...notAFact(`a fact must have its format in "v", a whole number from 1, got ${JSON.stringify(format)}`),
      ...id,
    };
  }
  if (format > FACT_FORMAT) {
    return {
      kind: 'problem',
      code: 'newer format',
      message: `this version reads facts up to format ${FACT_FORMAT}, got format ${format}`,
      remedy: 'update this program, then try again; nothing was changed',
      ...id,
    };
  }
  const damage = damageOf(written);
  if (damage) return { ...damage, ...id };
  const read = validated(written);
  if (isProblem(read)) return { ...read, ...id };
  return provable(read) ? nowFits(read) : read;
}

/** The text of a fact that does not fit its hash, and what to do; undefined when whole. */
function damageOf(written: Readonly<Record<string, unknown>>): Problem | undefined {
  const fact = written as unknown as Fact;
  if (fact.v === 2 && fact.salt === undefined && fact.gone === undefined)
    return notAFact('a fact of format 2 must have its "salt", got none');
  let hash: string;
  try {
    if (fitsHash(fact)) return undefined;
    hash = hashOf(fact);
  } catch (error) {
    return notAFact(error instanceof Error ? error.message : String(error));
  }
  return {
    kind: 'problem',
    code: 'damaged',
    message: `the hash of this fact must be ${hash} for what it says, got ${JSON.stringify(written.hash ?? null)}`,
    remedy:
      'it was changed after it was written: take it from another copy of the book, or strike it and write it again',
  };
}

function validated(now: Readonly<Record<string, unknown>>): Fact | Problem {
  const result = fact.safeParse(now);
  if (result.success) return result.data;
  if (!(FACT_KINDS as readonly unknown[]).includes(now.kind)) {
    return {
      kind: 'problem',
      code: 'unknown kind',
      message: `the kind of a fact must be one of ${FACT_KINDS.join(', ')}; got ${JSON.stringify(now.kind)}`,
      remedy: 'correct the kind, or update the program if a newer one wrote it',
    };
  }
  const faults = result.error.issues.map(issue => `${issue.path.join('.') || 'the fact'}: ${issue.message}`);
  return notAFact(`a fact "${now.kind}" must hold what its kind asks for; got ${faults.join('; ')}`);
}

function notAFact(message: string): Problem {
  return {
    kind: 'problem',
    code: 'not a fact',
    message,
    remedy: 'take the line from an export of the book; facts are not written by hand',
  };
}
