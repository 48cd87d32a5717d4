/**
 * One page of HTML that stands by itself.
 *
 * @module
 */

import { briefStyle } from './brief-style.js'

export function pageHtml({
  title,
  style,
  body,
}: {
  readonly title: string
  readonly style: string
  readonly body: string
}): string {
  return `<!doctype html>
<html lang="en-GB">
<head>
<meta charset="utf-8">
<meta name="viewport" content="width=device-width, initial-scale=1">
<title>${safe(title)}</title>
<style>${briefStyle}${style}</style>
</head>
<body>
${body}
</body>
</html>
`
}

export function safe(text: string): string {
  return text
    .replaceAll('&', '&amp;')
    .replaceAll('<', '&lt;')
    .replaceAll('>', '&gt;')
    .replaceAll('"', '&quot;')
}
