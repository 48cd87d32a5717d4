/**
 * Paths to figures: `parts.anode.modes.spent.scale`.
 *
 * A step is a field name, or in a list the name of the record: its `id`, else its `to` (links), else its
 * `check` (detection), else its place in the list.
 *
 * @module
 */

/** One number of the catalogue and where it stands. */
export interface Figure {
  readonly path: string
  readonly value: number
}

/** The step that names a record in a list. */
export function stepOf(item: unknown, index: number): string {
  if (typeof item === 'object' && item !== null) {
    const record = item as Readonly<Record<string, unknown>>
    for (const key of ['id', 'to', 'check']) {
      const name = record[key]
      if (typeof name === 'string') return name
    }
  }
  return String(index)
}

/** The children of an object or a list with the step to each; none for a plain value. */
export function childrenOf(node: unknown): readonly (readonly [string, unknown])[] {
  if (Array.isArray(node)) return node.map((item, index) => [stepOf(item, index), item] as const)
  if (typeof node === 'object' && node !== null) return Object.entries(node)
  return []
}

/** Joins a path and a further step. */
export function join(path: string, step: string): string {
  return path === '' ? step : `${path}.${step}`
}

/** Every number beneath a node, in order. */
export function figuresOf(node: unknown, path = ''): Figure[] {
  if (typeof node === 'number') return [{ path, value: node }]
  return childrenOf(node).flatMap(([step, child]) => figuresOf(child, join(path, step)))
}

/** What stands at a path, or undefined where nothing does. */
export function valueAt(node: unknown, path: string): unknown {
  let here: unknown = node
  for (const step of path.split('.')) {
    here = childrenOf(here).find(([name]) => name === step)?.[1]
    if (here === undefined) return undefined
  }
  return here
}

/** A copy in which every number is put through a function; nothing else changes. */
export function mapFigures<T>(node: T, change: (value: number, path: string) => number, path = ''): T {
  if (typeof node === 'number') return change(node, path) as T
  if (Array.isArray(node)) {
    return node.map((item, index) => mapFigures(item, change, join(path, stepOf(item, index)))) as T
  }
  if (typeof node === 'object' && node !== null) {
    return Object.fromEntries(
      Object.entries(node).map(([step, child]) => [step, mapFigures(child, change, join(path, step))]),
    ) as T
  }
  return node
}

/** A path of list places, as a schema gives it, turned into one of names. */
export function namedPath(node: unknown, steps: readonly PropertyKey[]): string {
  let here: unknown = node
  let path = ''
  for (const step of steps) {
    const child = (here as Readonly<Record<PropertyKey, unknown>> | undefined)?.[step]
    path = join(path, Array.isArray(here) ? stepOf(child, Number(step)) : String(step))
    here = child
  }
  return path
}
