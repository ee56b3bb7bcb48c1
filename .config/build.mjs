// Bundles the program, so that it starts fast and `npm start` needs no compiler.
import { spawnSync } from 'node:child_process';
import { chmodSync, mkdirSync, readdirSync, rmSync } from 'node:fs';
import { build } from 'esbuild';

mkdirSync('.build', { recursive: true });
for (const name of readdirSync('.build')) if (/\.mjs$|^flow.*\.json$/.test(name)) rmSync(`.build/${name}`);
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
    js: "#!/usr/bin/env node\nimport{createRequire as requireFrom}from'node:module';const require=requireFrom(import.meta.url);",
  },
  logLevel: 'warning',
});

chmodSync('.build/roofdown.mjs', 0o755);

// The checked flow is kept beside the program, so that a start parses no YAML.
const { status } = spawnSync(process.execPath, ['.build/roofdown.mjs', 'questions'], { stdio: ['ignore', 'ignore', 'inherit'] });
if (status !== 0) process.exit(status ?? 1);
