// Bundles the program, so that it starts fast and `npm start` needs no compiler.
import { rmSync } from 'node:fs';
import { build } from 'esbuild';

rmSync('.build', { recursive: true, force: true });
await build({
  entryPoints: { roofdown: 'src/main.ts' },
  outdir: '.build',
  outExtension: { '.js': '.mjs' },
  bundle: true,
  splitting: true,
  format: 'esm',
  platform: 'node',
  target: 'node20.19',
  jsx: 'automatic',
  minifySyntax: true,
  minifyWhitespace: true,
  legalComments: 'none',
  define: { 'process.env.NODE_ENV': '"production"', 'process.env.DEV': '"false"' },
  // Native or optional at run time; react-devtools-core is only for ink's own debugging.
  external: ['libsql', 'pg', 'pg-native', 'react-devtools-core'],
  banner: {
    js: "import{createRequire as __require}from'node:module';const require=__require(import.meta.url);",
  },
  logLevel: 'warning',
});
