/**
 * Worked cases: small life models, one sentence or two of their meaning each, whose answers follow by hand or by
 * quadrature. They go beyond {@link closedFormCases}, which stand on published forms.
 *
 * @module
 */

import type { ClosedFormCase } from './agreement.js'
import { workedCare } from './worked-care.js'
import { workedLives } from './worked-lives.js'
import { workedMoney } from './worked-money.js'

export const workedCases: readonly ClosedFormCase[] = [...workedLives, ...workedCare, ...workedMoney]
