/**
 * Day, dark or red: how the page is lit.
 *
 * @module
 */

import { useState } from 'react'

export const lights = ['day', 'dark', 'red'] as const
export type Light = (typeof lights)[number]

const place = 'gensettle.light'

/** The light chosen, or what the system wishes where none was. */
export function useLight(): readonly [Light, (next: Light) => void] {
  const [light, setLight] = useState(firstLight)
  return [
    light,
    (next) => {
      document.documentElement.className = next
      try {
        localStorage.setItem(place, next)
      } catch {
        // No storage: it holds until the page is left.
      }
      setLight(next)
    },
  ]
}

function firstLight(): Light {
  const named = lights.find((light) => document.documentElement.className === light)
  return named ?? (matchMedia('(prefers-color-scheme: dark)').matches ? 'dark' : 'day')
}
