// Before anything is drawn, so that a page opened at night is never white for a moment.
try {
  const light = localStorage.getItem('gensettle.light')
  if (light === 'day' || light === 'dark' || light === 'red') document.documentElement.className = light
} catch {
  // No storage: the system's own wish is followed.
}
