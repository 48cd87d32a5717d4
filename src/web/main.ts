/**
 * Where the pages begin: the workers start, and the page and its screen are fetched side by side.
 *
 * @module
 */

// Before all else: the worker needs longest.
import './work/begin.js'

import './look/tokens.css'
import './look/base.css'
import './look/shell.css'
import './look/parts.css'
import './look/logbook.css'
import './look/print.css'
import { routeOf } from './routes.js'
import { screenFiles } from './screen-files.js'

const { page } = routeOf(location.pathname)
if (page !== 'unknown') void screenFiles[page]().catch(() => undefined)
void import('./page.js')
