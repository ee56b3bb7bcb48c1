// Bundles a measurement and runs it: node .config/bench/run.mjs NAME [options]
import { spawnSync } from 'node:child_process';
import { rmSync } from 'node:fs';
import { build } from 'esbuild';

const [name, ...options] = process.argv.slice(2);
const outfile = `.config/bench/.${name}.mjs`;
const settings = { bundle: true, platform: 'node', format: 'esm', target: 'node20', packages: 'external' };
await build({ entryPoints: [`.config/bench/${name}.ts`], outfile, ...settings, logLevel: 'warning' });
const { status } = spawnSync(process.execPath, [outfile, ...options], { stdio: 'inherit' });
rmSync(outfile);
process.exit(status ?? 1);
