/**
 * A passage of a page: what to read it by in the margin, the matter beside it.
 *
 * @module
 */

import { type ReactNode, useId } from 'react'

export interface PassageProps {
  readonly title: string
  /** One or two sentences that say how to read what stands beside. */
  readonly says?: ReactNode
  /** The first of a page: its title is the page's. */
  readonly first?: boolean
  readonly className?: string
  readonly children: ReactNode
}

export function Passage({ title, says, first = false, className = '', children }: PassageProps) {
  const id = useId()
  const Heading = first ? 'h1' : 'h2'
  return (
    <section className={`passage ${first ? 'first' : ''} ${className}`} aria-labelledby={id}>
      <div className="margin">
        <Heading id={id} tabIndex={first ? -1 : undefined}>
          {title}
        </Heading>
        {typeof says === 'string' ? <p>{says}</p> : says}
      </div>
      <div>{children}</div>
    </section>
  )
}

/** The one answer of a page, in a sentence; the deciding clause in `<b>`. */
export function Say({ children }: { readonly children: ReactNode }) {
  return <p className="say">{children}</p>
}

/** The paragraph after the answer: money, confidence, the next best. */
export function Lead({ children }: { readonly children: ReactNode }) {
  return <p className="lead">{children}</p>
}
