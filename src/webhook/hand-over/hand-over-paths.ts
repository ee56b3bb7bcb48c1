import { failures, json, messageId } from '../json/openapi-parts.ts';

/** The addresses of handing over, for the OpenAPI description. */
export function handOverPaths() {
  const body = (name: string) => ({ required: true, content: json(name) });
  const wrong = ['not-valid', 'too-large', 'wrong-media-type', 'unavailable'] as const;
  return {
    '/hand-overs': {
      get: {
        operationId: 'getHandOverTerms',
        summary: 'How long a code works and where it is used',
        responses: { 200: { description: 'The terms.', content: json('HandOverTerms') }, ...failures([]) },
      },
      post: {
        operationId: 'leaveWalk',
        summary: 'Leave a walk for whoever has its code',
        requestBody: body('Leave'),
        responses: { 201: { description: 'It waits.', content: json('Left') }, ...failures(wrong) },
      },
      put: {
        operationId: 'renewWalk',
        summary: 'Bring a walk that still waits up to date',
        requestBody: body('Leave'),
        responses: { 204: { description: 'What waits is up to date.' }, ...failures(wrong) },
      },
      delete: {
        operationId: 'withdrawWalk',
        summary: 'Take back whatever waits from a walk',
        parameters: [{ name: 'walk', in: 'query', required: true, schema: { type: 'string' } }],
        responses: { 204: { description: 'Nothing of it waits.' }, ...failures([]) },
      },
    },
    '/hand-overs/take': {
      post: {
        operationId: 'takeWalk',
        summary: 'Take the walk under a code, once; again for ten minutes with the same webhook-id',
        parameters: [messageId],
        requestBody: body('Take'),
        responses: {
          200: { description: 'The walk.', content: json('Taken') },
          ...failures(['unknown-code', ...wrong]),
        },
      },
    },
  };
}
