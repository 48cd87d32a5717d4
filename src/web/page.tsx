/**
 * Draws the page that the address leads to.
 *
 * @module
 */

import { StrictMode } from 'react'
import { createRoot } from 'react-dom/client'
import { App } from './app.js'
import { keepInTouch } from './data/connection.js'
import { Gate } from './screens/gate.js'

keepInTouch()
createRoot(document.getElementById('page')!).render(
  <StrictMode>
    <Gate>
      <App />
    </Gate>
  </StrictMode>,
)

/** The forms, with what judges entries, are fetched as soon as the page stands still: a server that goes away later stops nobody. */
const makeReadyToWrite = () => void import('./entry/entry-form.js').catch(() => undefined)

// not every browser tells when it stands still
if ('requestIdleCallback' in window) requestIdleCallback(makeReadyToWrite, { timeout: 3_000 })
else setTimeout(makeReadyToWrite, 1_000)
