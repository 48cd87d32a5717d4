/**
 * Where the pages begin: the workers start, and the page and its screen are fetched side by side.
 *
 * @module
 */

// Before all else: the worker needs longest.
import { theConductor } from './work/begin.js'

import './look/tokens.css'
import './look/base.css'
import './look/shell.css'
import './look/parts.css'
import './look/logbook.css'
import './look/print.css'
import { answerSeed } from '../alternatives/answer-key.js'
import { today } from './data/today.js'
import { routeOf } from './routes.js'
import { screenFiles } from './screen-files.js'

const route = routeOf(location.pathname)
if (route.page !== 'unknown') void screenFiles[route.page]().catch(() => undefined)
if (route.page === 'alternatives') {
  const { boat, set } = route
  void theConductor()
    .expect({ boat, set, asOf: today(), seed: answerSeed })
    .catch(() => undefined)
}
void import('./page.js')
