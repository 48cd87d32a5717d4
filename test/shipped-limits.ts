import { shippedCatalogue as shipped } from '../src/cli/shipped.js'
import { limitsOf } from '../src/proof/limits.js'

export const shippedCatalogue = shipped()
export const shippedLimits = limitsOf(shippedCatalogue)
