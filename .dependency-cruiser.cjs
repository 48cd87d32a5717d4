/** Cycles and orphans; the order of folders has its own test (src/layout.test.ts). */
module.exports = {
  forbidden: [
    { name: 'no-cycle', severity: 'error', from: {}, to: { circular: true } },
    {
      name: 'no-orphan',
      severity: 'error',
      from: { orphan: true, pathNot: ['\\.test\\.ts$', '^src/layout', '^src/web/public/', '^src/web/vite-env', '^src/web/work/kernel-elsewhere'] },
      to: {},
    },
    { name: 'no-test-in-product', severity: 'error', from: { pathNot: '\\.test\\.ts$' }, to: { path: '\\.test\\.ts$' } },
    // What ends in ?url is a file that the bundler puts beside the pages.
    { name: 'resolvable', severity: 'error', from: {}, to: { couldNotResolve: true, pathNot: '\\?url$' } },
  ],
  options: {
    tsPreCompilationDeps: true,
    tsConfig: { fileName: 'tsconfig.json' },
    doNotFollow: { path: 'node_modules' },
    enhancedResolveOptions: { exportsFields: ['exports'], conditionNames: ['import', 'node', 'default'], extensions: ['.ts', '.js'] },
  },
}
