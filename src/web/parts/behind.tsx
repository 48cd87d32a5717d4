/**
 * What stands behind a picture: opened where it is asked for.
 *
 * @module
 */

import { type ReactNode, useState } from 'react'

/** Something folded away under its name, and made only when it is opened. */
export function Behind({ name, children }: { readonly name: string; readonly children: ReactNode }) {
  const [open, setOpen] = useState(false)
  return (
    <details className="behind" onToggle={(event) => setOpen(event.currentTarget.open)}>
      <summary>{name}</summary>
      {open && <div>{children}</div>}
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
