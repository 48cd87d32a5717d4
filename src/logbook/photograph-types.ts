/**
 * The kinds of picture that are kept.
 *
 * @module
 */

export const photographTypes = ['image/jpeg', 'image/png', 'image/webp', 'image/heic'] as const
