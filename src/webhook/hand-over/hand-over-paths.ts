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
        parameters: [messageId],
        requestBody: body('Leave'),
        responses: { 201: { description: 'It waits.', content: json('Left') }, ...failures(wrong) },
      },
    },
    '/hand-overs/take': {
      post: {
        operationId: 'takeWalk',
        summary: 'Take the walk under a code, once; again for ten minutes with the same webhook-id',
        parameters: [messageId],
        requestBody: body('Take'),
        responses: {
          200: { description: 'The walk.', content: json('Leave') },
          ...failures(['unknown-code', ...wrong]),
        },
      },
    },
  };
}
