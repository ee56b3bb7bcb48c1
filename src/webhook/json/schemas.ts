import * as z from 'zod';
import { handOverTos } from '../../conversation/hand-over/terms.ts';

/** The longest text of a message, in characters. */
export const mostCharacters = 1000;

const Text = z.strictObject({
  text: z.string().max(mostCharacters).describe('What the person wrote, in their own words.'),
});
const Choose = z.strictObject({
  choose: z
    .strictObject({
      key: z.string().min(1).max(200).describe('`ask.key` of the reply that offered the choice.'),
      option: z.string().min(1).max(200).describe('`id` of the choice.'),
      revision: z.number().int().min(0).describe('`revision` of that reply.'),
    })
    .describe('A press on a choice; for an earlier question it changes that answer, and the reply says so.'),
});
const Emergency = z.strictObject({
  emergency: z
    .literal(true)
    .describe('The emergency key: the walk stops and the reply is the order to leave.'),
});
const Hello = z.strictObject({ hello: z.literal(true).describe('The person comes back.') });

/** The body of a message. */
export const MessageBody = z.union([Text, Choose, Emergency, Hello]);
export type MessageBody = z.infer<typeof MessageBody>;

/** The body that starts a walk; all of it may be left out. */
export const StartBody = z.strictObject({
  audience: z.enum(['resident', 'volunteer', 'trainee']).exactOptional(),
  language: z
    .string()
    .regex(/^[a-z]{2}(-[A-Z]{2})?$/u)
    .exactOptional(),
  units: z.enum(['imperial', 'metric']).exactOptional(),
  text: z.string().max(mostCharacters).exactOptional().describe('The first words, if the person wrote any.'),
});

/** The body that leaves a walk for somebody else. */
export const LeaveBody = z.strictObject({
  walk: z
    .record(z.string(), z.unknown())
    .describe('The walk as `POST /hand-overs/take` gives it: made by this program, not by hand.'),
  to: z
    .enum(handOverTos)
    .describe('Who goes on: the caller, who sees no notes and no number to call back, or another volunteer.'),
  since: z.iso
    .datetime()
    .describe('When it was first left: the same walk with the same moment has the same code.'),
});

/** What `POST /hand-overs/take` gives. */
export const TakenBody = z.object({ walk: z.record(z.string(), z.unknown()) });

/** The body that takes the walk under a code. */
export const TakeBody = z.strictObject({
  code: z.string().min(1).max(40).describe('Twelve digits; spaces mean nothing.'),
});

/** How long a code works and where it is used. */
export const HandOverTerms = z.object({
  hours: z.number().int(),
  reach: z.string().nullable().describe('Where a caller sends the code, in words to be read out.'),
});

/** A walk that was left. */
export const LeftBody = z.object({
  ...HandOverTerms.shape,
  code: z
    .string()
    .describe('Opens the walk once: as a first message in the chat, or by `POST /hand-overs/take`.'),
});

const Choice = z.object({
  id: z.string(),
  number: z.number().int(),
  letter: z.string(),
  label: z.string(),
});
const Ask = z.object({
  key: z.string().describe('Names the question, and which thing it is about.'),
  kind: z.string(),
  question: z.string(),
  choices: z.array(Choice),
  several: z.boolean().describe('Several choices may be given.'),
  sides: z.array(z.string()).describe('The sides that still need an answer.'),
  hint: z.string(),
  guide: z
    .object({ listen: z.string(), cannotTell: z.string() })
    .nullable()
    .describe(
      'For a volunteer, who reads the question aloud: what to listen for, and what to do if the caller cannot tell.',
    ),
});
const Progress = z.object({
  stop: z.string().nullable(),
  answered: z.number().int(),
  asked: z.number().int(),
  stops: z.array(z.object({ id: z.string(), title: z.string(), state: z.enum(['done', 'here', 'ahead']) })),
});

/** Where a walk stands. */
export const Place = z.object({
  walk: z.string().describe('Unguessable id of the walk: whoever has it can read it.'),
  revision: z.number().int(),
  phase: z.enum(['asking', 'readBack', 'finished', 'emergency', 'paused']),
  ask: Ask.nullable().describe('The question that is asked now.'),
  progress: Progress,
  startedAt: z.string(),
  updatedAt: z.string(),
});
export type Place = z.infer<typeof Place>;

/** The reply to a message, in words and as data. */
export const ReplyBody = z.object({
  ...Place.shape,
  said: z
    .array(
      z.object({
        kind: z.enum(['say', 'readBack', 'report']).describe('`report`: here the report belongs.'),
        tone: z.enum(['plain', 'heading', 'quiet', 'warning', 'emergency']),
        lines: z.array(z.string()),
      }),
    )
    .describe('What is said before the question.'),
  report: z
    .string()
    .nullable()
    .describe('A link to the report that works for some days, when the reply holds one.'),
  textToSend: z
    .string()
    .nullable()
    .describe('What a volunteer copies and sends to the caller, when the reply closes a call.'),
  reply: z
    .record(z.string(), z.unknown())
    .describe('The same as ids and values, for clients with words of their own.'),
});
export type ReplyBody = z.infer<typeof ReplyBody>;

/** Problem details (RFC 9457). */
export const ProblemBody = z.object({
  type: z.string(),
  title: z.string(),
  status: z.number().int(),
  detail: z.string().exactOptional(),
});

/** An announcement on its way to another system. */
export const DeliveryBody = z.object({
  id: z.string(),
  walk: z.string(),
  revision: z.number().int(),
  at: z.string(),
  state: z.enum(['waiting', 'sent', 'dead']),
  attempts: z.number().int(),
  dueAt: z.string(),
  problem: z.string().exactOptional(),
});
