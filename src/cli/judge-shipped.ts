/**
 * Run by the build: judges what is shipped, and keeps it judged beside the program. Fails where a file is not sound.
 *
 * @module
 */

import { judged } from './judged.js'
import { judging } from './judging.js'

judged.keep(judging)
