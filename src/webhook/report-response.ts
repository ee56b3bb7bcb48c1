import type { WalkId, WalkRecord } from '../conversation/record.ts';
import { mediaTypes, wantedFormat } from './accept.ts';
import { HttpProblem } from './problem.ts';
import type { Site } from './site.ts';

/** Nothing in a report may load, run or send anything, nor be kept by a cache; a link must not leak where it came from. */
const headers = {
  'cache-control': 'no-store',
  'content-security-policy':
    "default-src 'none'; style-src 'unsafe-inline'; img-src data:; base-uri 'none'; form-action 'none'; frame-ancestors 'none'",
  'referrer-policy': 'no-referrer',
  'x-content-type-options': 'nosniff',
  'x-robots-tag': 'noindex, nofollow',
  vary: 'accept',
};

/** Loads a walk, or says that there is none. */
export async function loadWalk({ shell }: Site, id: string): Promise<WalkRecord> {
  const record = await shell.store.load(id as WalkId);
  if (!record) throw new HttpProblem('unknown-walk');
  return record;
}

/** The report of a walk in the wanted format. */
export function reportResponse(
  site: Site,
  record: WalkRecord,
  wanted: { format: string | undefined; accept: string | undefined; otherwise: 'json' | 'html' },
): Response {
  const format = wantedFormat(wanted.format, wanted.accept, wanted.otherwise);
  if (format === undefined) {
    const detail = 'Ask for one of text, markdown, html, json with ?format= or Accept.';
    throw new HttpProblem('not-acceptable', detail);
  }
  return new Response(site.makeReport(record, format), {
    headers: { ...headers, 'content-type': `${mediaTypes[format]}; charset=utf-8` },
  });
}
