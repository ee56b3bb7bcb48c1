import { isMap, isScalar, LineCounter, type Node, parseDocument } from 'yaml';
import type { FlowDocument } from '../flow/document.ts';
import type { FlowProblem } from '../flow/problem.ts';

function nodeAt(root: Node | null, path: readonly PropertyKey[]): Node | null {
  let node: Node | null = root;
  for (const key of path) {
    const next = child(node, key);
    if (!next) return node;
    node = next;
  }
  return node;
}

/** A map's pair is shown at its key: that is the word to look at. */
function child(node: Node | null, key: PropertyKey): Node | undefined {
  if (isMap(node)) {
    const pair = node.items.find((item) => isScalar(item.key) && String(item.key.value) === String(key));
    return (pair?.value ?? pair?.key ?? undefined) as Node | undefined;
  }
  const items = (node as { items?: unknown[] } | null)?.items;
  return typeof key === 'number' ? (items?.[key] as Node | undefined) : undefined;
}

function keyNode(root: Node | null, path: readonly PropertyKey[]): Node | null {
  const parent = nodeAt(root, path.slice(0, -1));
  const last = path.at(-1);
  if (!isMap(parent) || last === undefined) return nodeAt(root, path);
  const pair = parent.items.find((item) => isScalar(item.key) && String(item.key.value) === String(last));
  return (pair?.key as Node | undefined) ?? parent;
}

/** Reads YAML (and so JSON): the value with its positions, or what is wrong with the text. */
export function readYaml(path: string, text: string): { document: FlowDocument; problems: FlowProblem[] } {
  const lines = new LineCounter();
  const parsed = parseDocument(text, { lineCounter: lines, prettyErrors: false, uniqueKeys: true });
  const place = (offset: number) => {
    const { line, col } = lines.linePos(offset);
    return { line: Math.max(line, 1), column: Math.max(col, 1) };
  };
  // What comes after the first fault of the text is mostly its echo.
  const problems = parsed.errors
    .slice(0, 1)
    .map((error): FlowProblem => ({ path, ...place(error.pos[0]), at: '', problem: `${error.message}.` }));
  const root = parsed.contents as Node | null;
  const document: FlowDocument = {
    path,
    value: problems.length > 0 ? undefined : parsed.toJS(),
    positionOf: (at) => place(keyNode(root, at)?.range?.[0] ?? 0),
  };
  return { document, problems };
}
