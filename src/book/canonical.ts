/**
 * One text for one value, whatever order its keys were written in: the JSON Canonicalization Scheme.
 * Source: RFC 8785 (2020), section 3.2: no white space, keys sorted by UTF-16 code units, numbers and strings as
 * ECMAScript writes them. A key whose value is undefined is left out, as JSON does.
 * Throws on what JSON cannot hold: a number that is not finite, a string that is not well-formed Unicode.
 */
export function canonical(value: unknown): string {
  if (value === null || typeof value === 'boolean') return String(value);
  if (typeof value === 'string') return text(value);
  if (typeof value === 'number') {
    if (!Number.isFinite(value)) throw new RangeError(`canonical: value must be a finite number, got ${value}`);
    return JSON.stringify(value);
  }
  if (Array.isArray(value)) return `[${value.map(canonical).join(',')}]`;
  if (typeof value !== 'object') throw new TypeError(`canonical: value must be plain JSON, got ${typeof value}`);
  const members: string[] = [];
  const record = value as Readonly<Record<string, unknown>>;
  for (const key of Object.keys(record).sort()) {
    if (record[key] !== undefined) members.push(`${text(key)}:${canonical(record[key])}`);
  }
  return `{${members.join(',')}}`;
}

function text(value: string): string {
  if (/\p{Surrogate}/u.test(value)) {
    throw new RangeError(
      `canonical: value must be well-formed Unicode, got half a character in ${JSON.stringify(value)}`,
    );
  }
  return JSON.stringify(value);
}
