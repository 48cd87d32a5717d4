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
