/**
 * Where the pages begin.
 *
 * @module
 */

import { StrictMode } from 'react'
import { createRoot } from 'react-dom/client'
import { App } from './app.js'
import './look/tokens.css'
import './look/base.css'
import './look/shell.css'
import './look/parts.css'
import './look/print.css'

createRoot(document.getElementById('page')!).render(
  <StrictMode>
    <App />
  </StrictMode>,
)
