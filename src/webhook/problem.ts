/** What can be wrong with a request; the last part of the `type` of a problem. */
export const problems = {
  'not-signed': { status: 401, title: 'The request is not signed, or its signature does not hold.' },
  'wrong-host': {
    status: 421,
    title: 'Without a secret, requests are taken for this machine by its own name only.',
  },
  'unknown-walk': { status: 404, title: 'There is no such walk.' },
  'unknown-path': { status: 404, title: 'There is nothing at this address.' },
  'unknown-delivery': { status: 404, title: 'There is no such dead delivery.' },
  'unknown-code': { status: 404, title: 'No walk waits under this code: it is mistyped, used or over.' },
  'link-over': { status: 410, title: 'This link does not work any more.' },
  'wrong-method': { status: 405, title: 'This address does not take that method.' },
  'not-acceptable': { status: 406, title: 'The report is not made in that format.' },
  'too-large': { status: 413, title: 'The request is too large.' },
  'wrong-media-type': { status: 415, title: 'The body is not of the expected type.' },
  'not-valid': { status: 422, title: 'The body does not say what is needed.' },
  'too-many': { status: 429, title: 'Too many messages in a short time.' },
  fault: { status: 500, title: 'A fault of ours.' },
  unavailable: { status: 503, title: 'Nothing can be kept just now. Send the same message again.' },
} as const;

export type ProblemCode = keyof typeof problems;

/** Thrown by what answers a request; becomes problem details. */
export class HttpProblem extends Error {
  override readonly name = 'HttpProblem';
  readonly code: ProblemCode;
  readonly detail: string | undefined;
  readonly headers: Readonly<Record<string, string>>;

  constructor(code: ProblemCode, detail?: string, headers: Readonly<Record<string, string>> = {}) {
    super(problems[code].title);
    this.code = code;
    this.detail = detail;
    this.headers = headers;
  }
}

/** Problem details of RFC 9457; `type` is an address on this server at which the problem is described. */
export function problemResponse({ code, detail, headers }: HttpProblem): Response {
  const { status, title } = problems[code];
  const body = { type: `/problems/${code}`, title, status, ...(detail === undefined ? {} : { detail }) };
  return new Response(`${JSON.stringify(body)}\n`, {
    status,
    headers: { ...headers, 'content-type': 'application/problem+json', 'cache-control': 'no-store' },
  });
}
