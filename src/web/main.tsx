/**
 * Where the pages begin.
 *
 * @module
 */

// First, so that the workers start while the rest is still being read.
import './work/begin.js'

import { StrictMode } from 'react'
import { createRoot } from 'react-dom/client'
import { App } from './app.js'
import { keepInTouch } from './data/connection.js'
import { Gate } from './screens/gate.js'
import './look/tokens.css'
import './look/base.css'
import './look/shell.css'
import './look/parts.css'
import './look/logbook.css'
import './look/print.css'

keepInTouch()
createRoot(document.getElementById('page')!).render(
  <StrictMode>
    <Gate>
      <App />
    </Gate>
  </StrictMode>,
)
