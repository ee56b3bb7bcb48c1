// Bundles measurements and runs them: node .config/bench/run.mjs [NAME …] [--options]; without a name, all but the webhook.
import { spawnSync } from 'node:child_process';
import { rmSync } from 'node:fs';
import { build } from 'esbuild';

const words = process.argv.slice(2);
const options = words.filter((word) => word.startsWith('-'));
const named = words.filter((word) => !word.startsWith('-'));
const names = named.length > 0 ? named : ['turn', 'assess', 'plan', 'start'];
const settings = { bundle: true, platform: 'node', format: 'esm', target: 'node20', packages: 'external' };
let failed = 0;
for (const name of names) {
  const outfile = `.config/bench/.${name}.mjs`;
  await build({ entryPoints: [`.config/bench/${name}.ts`], outfile, ...settings, logLevel: 'warning' });
  const { status } = spawnSync(process.execPath, [outfile, ...options], { stdio: 'inherit' });
  rmSync(outfile);
  failed ||= status ?? 1;
}
process.exit(failed);
