import * as z from 'zod';
import { reportFormats } from '../../report/formats.ts';
import { reportJsonSchema } from '../../report/report.ts';
import { mediaTypes } from '../accept.ts';
import { handOverPaths } from '../hand-over/hand-over-paths.ts';
import { failures, json, messageId, ref } from './openapi-parts.ts';
import {
  DeliveryBody,
  HandOverTerms,
  LeaveBody,
  LeftBody,
  MessageBody,
  Place,
  ProblemBody,
  ReplyBody,
  StartBody,
  TakeBody,
  TakenBody,
} from './schemas.ts';

const schemaOf = (schema: z.ZodType) => {
  const { $schema: _, ...rest } = z.toJSONSchema(schema, { target: 'draft-2020-12' });
  return rest;
};
const walkId = { name: 'id', in: 'path', required: true, schema: { type: 'string' } };

const reportContent = Object.fromEntries(
  reportFormats.map((format) => [
    mediaTypes[format],
    { schema: format === 'json' ? ref('Report') : { type: 'string' } },
  ]),
);

function walkPaths() {
  const reply = { description: 'The reply.', content: json('Reply') };
  const body = (name: string, required: boolean) => ({ required, content: json(name) });
  const asked = ['too-many', 'unavailable', 'too-large', 'not-valid', 'wrong-media-type'] as const;
  return {
    '/walks': {
      post: {
        operationId: 'startWalk',
        summary: 'Start a walk',
        parameters: [messageId],
        requestBody: body('Start', false),
        responses: { 201: reply, ...failures(asked) },
      },
    },
    '/walks/{id}/messages': {
      post: {
        operationId: 'sendMessage',
        summary: 'Say something in a walk',
        parameters: [walkId, messageId],
        requestBody: body('Message', true),
        responses: { 200: reply, ...failures(['unknown-walk', ...asked]) },
      },
    },
    '/walks/{id}': {
      get: {
        operationId: 'getPlace',
        summary: 'Where the walk stands',
        parameters: [walkId],
        responses: {
          200: { description: 'The place.', content: json('Place') },
          ...failures(['unknown-walk']),
        },
      },
      delete: {
        operationId: 'deleteWalk',
        summary: 'Delete a walk with everything kept for it',
        parameters: [walkId],
        responses: { 204: { description: 'Deleted.' }, ...failures(['unknown-walk']) },
      },
    },
    '/walks/{id}/report': {
      get: {
        operationId: 'getReport',
        summary: 'The report as it stands',
        parameters: [
          walkId,
          { name: 'format', in: 'query', schema: { type: 'string', enum: [...reportFormats] } },
        ],
        responses: {
          200: { description: 'The report.', content: reportContent },
          ...failures(['unknown-walk', 'not-acceptable']),
        },
      },
    },
  };
}

function deliveryPaths() {
  const states = ['waiting', 'sent', 'dead'];
  const list = { type: 'array', items: ref('Delivery') };
  return {
    '/deliveries': {
      get: {
        operationId: 'listDeliveries',
        summary: 'Finished walks on their way to another system',
        parameters: [
          { name: 'state', in: 'query', schema: { type: 'string', enum: states, default: 'dead' } },
        ],
        responses: {
          200: {
            description: 'Newest first, at most 100.',
            content: { 'application/json': { schema: list } },
          },
          ...failures(['not-valid']),
        },
      },
    },
    '/deliveries/{id}/resend': {
      post: {
        operationId: 'resendDelivery',
        summary: 'Send a dead delivery again',
        parameters: [walkId],
        responses: { 202: { description: 'It waits to be sent.' }, ...failures(['unknown-delivery']) },
      },
    },
  };
}

function schemas() {
  const { $schema: _, ...report } = reportJsonSchema() as Record<string, unknown>;
  return {
    Start: schemaOf(StartBody),
    Message: schemaOf(MessageBody),
    Reply: schemaOf(ReplyBody),
    Place: schemaOf(Place),
    Leave: schemaOf(LeaveBody),
    Left: schemaOf(LeftBody),
    Take: schemaOf(TakeBody),
    Taken: schemaOf(TakenBody),
    HandOverTerms: schemaOf(HandOverTerms),
    Delivery: schemaOf(DeliveryBody),
    Problem: schemaOf(ProblemBody),
    Report: report,
  };
}

/** The OpenAPI 3.1 description of the JSON channel, its schemas made from those that check the requests. */
export function openApi(version: string, publicUrl: string | undefined): object {
  return {
    openapi: '3.1.0',
    info: {
      title: 'roofdown',
      version,
      description:
        'A walk round one house, question by question. Requests are signed by Standard Webhooks when the server has a ' +
        'secret; a request without a body is signed over "METHOD /path?query" in place of the body.',
    },
    ...(publicUrl === undefined ? {} : { servers: [{ url: publicUrl }] }),
    paths: { ...walkPaths(), ...handOverPaths(), ...deliveryPaths() },
    components: { schemas: schemas() },
  };
}
