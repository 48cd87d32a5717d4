/**
 * The version of this program: a kept answer says which one reckoned.
 *
 * @module
 */

/** As package.json has it. */
export const programVersion = '0.1.0'
