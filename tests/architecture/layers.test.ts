import { readdirSync, readFileSync, statSync } from 'node:fs';
import { dirname, join, relative, resolve } from 'node:path';
import { describe, expect, it } from 'vitest';

const source = resolve('src');

/** In the order of dependence: a folder imports only from those before it. */
const layers = [
  'quantities',
  'flow',
  'answers',
  'computations',
  'findings',
  'ranking',
  'assess',
  'planning',
  'machine',
  'wording',
  'report',
  'conversation',
  'practice',
  'storage',
  'terminal',
  'webhook',
  'files',
  'commands',
  'main.ts',
] as const;

/** Edges stand side by side: none imports another. */
const edges = new Set(['storage', 'terminal', 'webhook']);

/** Packages and the folders that may import them; a package that is not here may be imported nowhere. */
const packages: Readonly<Record<string, readonly string[]>> = {
  yaml: ['files'],
  zod: ['flow', 'answers', 'report', 'practice', 'storage', 'webhook', 'settings.ts', 'files', 'commands'],
  xstate: ['machine'],
  marked: ['report'],
  ink: ['terminal'],
  react: ['terminal'],
  'react/jsx-runtime': ['terminal'],
  libsql: ['storage'],
  '@formatjs/intl': ['wording'],
  commander: ['main.ts', 'commands'],
  pg: ['storage'],
  cdigit: ['webhook'],
  hono: ['webhook'],
  'hono/body-limit': ['webhook'],
  '@hono/node-server': ['commands'],
  pino: ['commands'],
  'ts-fsrs': ['practice'],
};

/** Folders in which nothing reads files, clock, network, environment or randomness. */
const pure = new Set([
  'quantities',
  'flow',
  'answers',
  'computations',
  'findings',
  'ranking',
  'assess',
  'planning',
  'machine',
  'wording',
  'report',
  'conversation',
  'practice',
]);
const impure =
  /\b(?:Date\.now|new Date\(\)|Math\.random|process\.|console\.|globalThis\.fetch|fetch\(|setTimeout|setInterval)/;

function filesBelow(folder: string): string[] {
  return readdirSync(folder, { recursive: true, encoding: 'utf8' })
    .map((name) => join(folder, name))
    .filter((path) => /\.tsx?$/.test(path) && statSync(path).isFile());
}

const layerOf = (path: string) => relative(source, path).split('/')[0] ?? '';
const withoutComments = (text: string) => text.replace(/\/\*[\s\S]*?\*\//g, '').replace(/^\s*\/\/.*$/gm, '');

interface Import {
  readonly from: string;
  readonly name: string;
}

function importsOf(path: string): Import[] {
  const text = withoutComments(readFileSync(path, 'utf8'));
  const found = [...text.matchAll(/(?:from|import)\s*\(?\s*'([^']+)'/g)];
  return found.map((match) => ({ from: path, name: match[1] ?? '' }));
}

const files = filesBelow(source);
const imports = files.flatMap(importsOf);
const say = ({ from, name }: Import) => `${relative(source, from)} imports ${name}`;

describe('the layers of the source', () => {
  it('knows every folder', () => {
    const known = new Set<string>([...layers, 'settings.ts']);
    expect([...new Set(files.map(layerOf))].filter((layer) => !known.has(layer))).toEqual([]);
  });

  it('lets a folder import only from the folders before it', () => {
    const position = (layer: string) =>
      layer === 'settings.ts' ? layers.indexOf('files') + 0.5 : layers.indexOf(layer as never);
    const wrong = imports.filter(({ from, name }) => {
      if (!name.startsWith('.')) return false;
      const [here, there] = [layerOf(from), layerOf(resolve(dirname(from), name))];
      if (here === there) return false;
      return position(there) > position(here) || (edges.has(here) && edges.has(there));
    });
    expect(wrong.map(say)).toEqual([]);
  });

  it('fences the outside packages', () => {
    const wrong = imports.filter(({ from, name }) => {
      if (name.startsWith('.')) return false;
      const layer = layerOf(from);
      if (name.startsWith('node:')) return pure.has(layer);
      return !packages[name]?.includes(layer);
    });
    expect(wrong.map(say)).toEqual([]);
  });

  it('imports zod by its names, so that a bundle holds only what is used of it', () => {
    const whole = files.filter((path) =>
      /import (?:type )?\{[^}]*\bz\b[^}]*\} from 'zod'/.test(readFileSync(path, 'utf8')),
    );
    expect(whole.map((path) => relative(source, path))).toEqual([]);
  });

  it('imports marked in one file only', () => {
    expect(imports.filter(({ name }) => name === 'marked').length).toBeLessThanOrEqual(1);
  });

  it('keeps files, clock, network, environment and randomness out of the core', () => {
    const wrong = files
      .filter((path) => pure.has(layerOf(path)))
      .flatMap((path) =>
        withoutComments(readFileSync(path, 'utf8'))
          .split('\n')
          .filter((line) => impure.test(line))
          .map((line) => `${relative(source, path)}: ${line.trim()}`),
      );
    expect(wrong).toEqual([]);
  });
});
