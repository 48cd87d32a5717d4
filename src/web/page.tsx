/**
 * Draws the page that the address leads to.
 *
 * @module
 */

import { StrictMode } from 'react'
import { createRoot } from 'react-dom/client'
import { App } from './app.js'
import { keepInTouch } from './data/connection.js'
import { fetchJudge } from './data/write.js'
import { Gate } from './screens/gate.js'

keepInTouch()
createRoot(document.getElementById('page')!).render(
  <StrictMode>
    <Gate>
      <App />
    </Gate>
  </StrictMode>,
)

/** What is written later asks no server for its forms and its judge: they are fetched as soon as the page stands still. */
const makeReadyToWrite = () =>
  void Promise.all([fetchJudge(), import('./entry/entry-form.js')]).catch(() => undefined)

// not every browser tells when it stands still
if ('requestIdleCallback' in window) requestIdleCallback(makeReadyToWrite, { timeout: 3_000 })
else setTimeout(makeReadyToWrite, 1_000)
