import { type ProblemCode, problems } from '../problem.ts';

/** A reference to a schema of the document. */
export const ref = (name: string) => ({ $ref: `#/components/schemas/${name}` });
/** A JSON body of that schema. */
export const json = (name: string) => ({ 'application/json': { schema: ref(name) } });

/** The problems of an operation, by status. */
export function failures(codes: readonly ProblemCode[]): Record<string, object> {
  const all: readonly ProblemCode[] = ['not-signed', 'wrong-host', ...codes];
  return Object.fromEntries(
    all.map((code) => [
      String(problems[code].status),
      {
        description: problems[code].title,
        content: { 'application/problem+json': { schema: ref('Problem') } },
      },
    ]),
  );
}

/** The header that names a message. */
export const messageId = {
  name: 'webhook-id',
  in: 'header',
  required: false,
  description: 'Names the message: a repetition with the same id gets the same reply and changes nothing.',
  schema: { type: 'string', maxLength: 256 },
};
