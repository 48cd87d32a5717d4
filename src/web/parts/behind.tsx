/**
 * What stands behind a picture: opened where it is asked for.
 *
 * @module
 */

import type { ReactNode } from 'react'

/** Something folded away under its name. */
export function Behind({
  name,
  children,
  open,
}: {
  readonly name: string
  readonly children: ReactNode
  readonly open?: boolean
}) {
  return (
    <details className="behind" open={open}>
      <summary>{name}</summary>
      <div>{children}</div>
    </details>
  )
}

/** A table that may be wider than the page: it alone is moved sideways. */
export function WideTable({ name, children }: { readonly name: string; readonly children: ReactNode }) {
  return (
    // biome-ignore lint/a11y/noNoninteractiveTabindex: what scrolls must be reachable by keyboard
    <section className="sideways" tabIndex={0} aria-label={name}>
      {children}
    </section>
  )
}
