/**
 * Escape closes what is open around where one is, and goes back to what opened it.
 *
 * @module
 */

import { useEffect } from 'react'

/** Listens for Escape. `onWriting`: pressed in the form for an entry, with nothing open in it. */
export function useEscape(onWriting: () => void): void {
  useEffect(() => {
    const press = ({ key }: KeyboardEvent) => {
      const at = document.activeElement
      if (key !== 'Escape' || at === null) return
      const opener = openerAround(at)
      if (opener) {
        opener.focus()
        opener.click()
      } else if (at.closest('.writing')) onWriting()
    }
    window.addEventListener('keydown', press)
    return () => window.removeEventListener('keydown', press)
  }, [onWriting])
}

/** The button of the figure that is open here, or of the list of pages. */
function openerAround(at: Element): HTMLElement | null | undefined {
  const opened = at.closest('.opened[id]')
  if (opened) return document.querySelector<HTMLElement>(`[aria-controls="${opened.id}"]`)
  return (
    at.closest<HTMLElement>('.figure[aria-expanded="true"]') ??
    at.closest('.foot details[open]')?.querySelector<HTMLElement>('summary')
  )
}
