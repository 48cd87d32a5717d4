/**
 * Where the pages begin.
 *
 * @module
 */

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
import './work/begin.js'

keepInTouch()
createRoot(document.getElementById('page')!).render(
  <StrictMode>
    <Gate>
      <App />
    </Gate>
  </StrictMode>,
)
