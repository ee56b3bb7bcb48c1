import type * as z from 'zod';

interface Definition {
  readonly innerType?: unknown;
  readonly shape?: Readonly<Record<PropertyKey, unknown>>;
  readonly element?: unknown;
  readonly valueType?: unknown;
  readonly options?: readonly unknown[];
}

const definitionOf = (schema: unknown) => (schema as { def?: Definition } | undefined)?.def;

/** The schema itself, or the alternatives of a union, without what makes it optional or gives it a default. */
function alternatives(schema: unknown): unknown[] {
  const definition = definitionOf(schema);
  if (definition?.innerType !== undefined) return alternatives(definition.innerType);
  return definition?.options ? definition.options.flatMap(alternatives) : [schema];
}

function inside(schema: unknown, key: PropertyKey): unknown[] {
  return alternatives(schema).flatMap((one) => {
    const definition = definitionOf(one);
    const found = definition?.shape?.[key] ?? definition?.element ?? definition?.valueType;
    return found === undefined ? [] : [found];
  });
}

/** The keys that a schema knows at a path: read from the schema itself, so that the list never falls behind. */
export function knownKeys(schema: z.ZodType, path: readonly PropertyKey[]): string[] {
  let at: unknown[] = [schema];
  for (const key of path) at = at.flatMap((one) => inside(one, key));
  const keys = at.flatMap(alternatives).flatMap((one) => Object.keys(definitionOf(one)?.shape ?? {}));
  return [...new Set(keys)];
}
