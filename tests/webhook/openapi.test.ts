import { describe, expect, it } from 'vitest';
import { jsonRequest, testSite } from './test-site.ts';

interface Document {
  readonly openapi: string;
  readonly paths: Record<string, Record<string, { responses: Record<string, unknown>; operationId: string }>>;
  readonly components: { schemas: Record<string, unknown> };
}

async function document(): Promise<Document> {
  const response = await testSite().webhook.fetch(jsonRequest('GET', '/openapi.json'));
  expect(response.headers.get('content-type')).toBe('application/json');
  return (await response.json()) as Document;
}

const references = (value: unknown): string[] => {
  if (Array.isArray(value)) return value.flatMap(references);
  if (typeof value !== 'object' || value === null) return [];
  return Object.entries(value).flatMap(([name, one]) => (name === '$ref' ? [String(one)] : references(one)));
};

describe('the OpenAPI description', () => {
  it('is of version 3.1, and every reference in its paths leads somewhere', async () => {
    const { openapi, paths, components } = await document();
    expect(openapi).toMatch(/^3\.1\./);
    const wanted = new Set(references(paths));
    expect([...wanted].sort()).toEqual(
      Object.keys(components.schemas)
        .map((name) => `#/components/schemas/${name}`)
        .sort(),
    );
  });

  it('names every route that a request is answered on, and no other', async () => {
    const { paths } = await document();
    const { webhook } = testSite();
    for (const [path, operations] of Object.entries(paths)) {
      for (const method of Object.keys(operations)) {
        const request = jsonRequest(
          method.toUpperCase(),
          path.replace('{id}', 'nobody'),
          method === 'post' ? {} : undefined,
        );
        const { status } = await webhook.fetch(request);
        const described = Object.keys(operations[method]?.responses ?? {});
        expect(described, `${method} ${path}`).toContain(String(status));
      }
    }
    expect(Object.keys(paths)).toHaveLength(8);
  });
});
