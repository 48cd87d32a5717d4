/**
 * Buttons for acts, and links for going somewhere.
 *
 * @module
 */

import type { AnchorHTMLAttributes, ButtonHTMLAttributes, MouseEvent } from 'react'
import { goTo } from '../routes.js'

export interface ButtonProps extends ButtonHTMLAttributes<HTMLButtonElement> {
  /** `filled`: the one act of a passage that is most likely; `light`: the least likely. */
  readonly look?: 'filled' | 'outlined' | 'light'
}

/** An act. */
export function Button({ look = 'outlined', className = '', type = 'button', ...rest }: ButtonProps) {
  return <button type={type} className={`button ${look} ${className}`} {...rest} />
}

/** An act in the midst of a sentence. */
export function PlainButton({
  className = '',
  type = 'button',
  ...rest
}: ButtonHTMLAttributes<HTMLButtonElement>) {
  return <button type={type} className={`plain-button ${className}`} {...rest} />
}

export interface LinkProps extends AnchorHTMLAttributes<HTMLAnchorElement> {
  /** A path of this program. */
  readonly to: string
}

/** A link to another page of this program. */
export function Link({ to, onClick, ...rest }: LinkProps) {
  const follow = (event: MouseEvent<HTMLAnchorElement>) => {
    onClick?.(event)
    const otherwise = event.defaultPrevented || event.button !== 0
    if (otherwise || event.metaKey || event.ctrlKey || event.shiftKey || event.altKey) return
    event.preventDefault()
    goTo(to)
  }
  return <a href={to} onClick={follow} {...rest} />
}
