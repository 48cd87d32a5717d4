// `npm start`: install, build, open the store, say what the demonstration boats' answers are, and serve.
import { spawn } from 'node:child_process'
import { join } from 'node:path'
import { installIfNeeded, root, run } from './install.js'

installIfNeeded()
run('npm', 'run', '--silent', 'build')
const served = spawn(
  process.execPath,
  [join(root, 'bin', 'gensettle.js'), 'serve', ...process.argv.slice(2)],
  {
    cwd: root,
    stdio: 'inherit',
  },
)
for (const signal of ['SIGINT', 'SIGTERM']) process.on(signal, () => served.kill(signal))
served.on('exit', (code) => {
  process.exitCode = code ?? 0
})
