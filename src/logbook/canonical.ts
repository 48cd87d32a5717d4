/**
 * One text for one value, so that two copies of an entry can be compared byte for byte.
 *
 * The form is that of RFC 8785 (JSON Canonicalization Scheme): no blanks, fields in the order of their UTF-16 code units,
 * numbers and texts as ECMAScript writes them. Held: recalled.
 *
 * @module
 */

/**
 * The canonical text of a JSON value. Fields that are undefined are left out.
 *
 * @throws TypeError if the value holds something that JSON has no form for.
 */
export function canonicalText(value: unknown): string {
  if (Array.isArray(value)) return `[${value.map(canonicalText).join(',')}]`
  if (typeof value === 'object' && value !== null) {
    const record = value as Readonly<Record<string, unknown>>
    const fields = Object.keys(record)
      .filter((key) => record[key] !== undefined)
      .sort()
      .map((key) => `${JSON.stringify(key)}:${canonicalText(record[key])}`)
    return `{${fields.join(',')}}`
  }
  const plain =
    value === null || typeof value === 'string' || typeof value === 'boolean' || Number.isFinite(value)
  if (!plain) throw new TypeError(`value must be one that JSON can write; found ${String(value)}`)
  return JSON.stringify(value)
}
