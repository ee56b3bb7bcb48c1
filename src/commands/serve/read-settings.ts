import * as z from 'zod';
import { isLoopback } from '../../webhook/loopback.ts';
import { readSecret } from '../../webhook/standard-webhooks.ts';
import { ProgramError } from '../program-error.ts';

/** A whole number in text, within a range. */
const whole = (low: number, high: number, otherwise: number) =>
  z
    .string()
    .regex(/^\d+$/u, 'must be a whole number')
    .transform(Number)
    .pipe(z.number().min(low, `must be at least ${low}`).max(high, `must be at most ${high}`))
    .default(otherwise);

const secret = z
  .string()
  .transform(readSecret)
  .pipe(z.custom<Uint8Array>((key) => key !== undefined, 'must be whsec_ and base64 of at least 24 bytes'));
const key = z
  .string()
  .regex(/^[A-Za-z0-9+/]+={0,2}$/u, 'must be base64')
  .refine((text) => Buffer.from(text, 'base64').length >= 32, 'must hold at least 32 bytes')
  .transform((text): Uint8Array => Buffer.from(text, 'base64'));
const token = z.string().min(16, 'must have at least 16 characters');
const webAddress = z
  .url({ protocol: /^https?$/u, error: 'must be an http or https address' })
  .transform((text) => text.replace(/\/+$/u, ''));

/** Every variable of the environment that `serve` reads; its meaning is in the README. */
export const ServeEnvironment = z.object({
  ROOFDOWN_HOST: z.string().min(1).default('127.0.0.1'),
  ROOFDOWN_PORT: whole(0, 65_535, 8080),
  ROOFDOWN_PUBLIC_URL: webAddress.optional(),
  ROOFDOWN_DATABASE_URL: z
    .string()
    .regex(/^postgres(?:ql)?:\/\//u, 'must start with postgres://')
    .optional(),
  ROOFDOWN_DATABASE_POOL: whole(1, 200, 10),
  ROOFDOWN_DATABASE_FILE: z.string().min(1).optional(),
  ROOFDOWN_KEY: key.optional(),
  ROOFDOWN_SECRET: secret.optional(),
  ROOFDOWN_SMS_TOKEN: token.optional(),
  ROOFDOWN_SMS_SIGNATURE_HEADER: z
    .string()
    .regex(/^[A-Za-z0-9-]+$/u, 'must be the name of a header')
    .default('x-sms-signature'),
  ROOFDOWN_TELEGRAM_SECRET: token.optional(),
  ROOFDOWN_METRICS_TOKEN: token.optional(),
  ROOFDOWN_LINK_HOURS: whole(1, 24 * 90, 24 * 7),
  ROOFDOWN_CODE_HOURS: whole(1, 24 * 14, 48),
  ROOFDOWN_REACH: z.string().trim().min(1).max(120, 'must have at most 120 characters').optional(),
  ROOFDOWN_KEEP_DAYS: whole(0, 36_500, 365),
  ROOFDOWN_BODY_BYTES: whole(1024, 1_048_576, 65_536),
  ROOFDOWN_MESSAGES_PER_MINUTE: whole(1, 100_000, 60),
  ROOFDOWN_STARTS_PER_MINUTE: whole(1, 100_000, 60),
  ROOFDOWN_DELIVER_TO: webAddress.optional(),
  ROOFDOWN_DELIVER_SECRET: secret.optional(),
  ROOFDOWN_DRAIN_SECONDS: whole(1, 600, 20),
  ROOFDOWN_LOG_LEVEL: z.enum(['debug', 'info', 'warn', 'error', 'silent']).default('info'),
});
export type ServeSettings = z.infer<typeof ServeEnvironment>;

/** What does not go together, each with what to do. */
function conflicts(settings: ServeSettings): string[] {
  const channel = [settings.ROOFDOWN_SECRET, settings.ROOFDOWN_SMS_TOKEN, settings.ROOFDOWN_TELEGRAM_SECRET];
  const phones = settings.ROOFDOWN_SMS_TOKEN !== undefined || settings.ROOFDOWN_TELEGRAM_SECRET !== undefined;
  const outside = !isLoopback(settings.ROOFDOWN_HOST) || channel.some((one) => one !== undefined);
  const checks: readonly (readonly [boolean, string])[] = [
    [
      !isLoopback(settings.ROOFDOWN_HOST) && settings.ROOFDOWN_SECRET === undefined,
      `ROOFDOWN_HOST is ${settings.ROOFDOWN_HOST}, which others can reach, so ROOFDOWN_SECRET is needed. Make one: ` +
        'echo "whsec_$(openssl rand -base64 32)"',
    ],
    [
      settings.ROOFDOWN_PUBLIC_URL !== undefined && settings.ROOFDOWN_SECRET === undefined,
      'ROOFDOWN_PUBLIC_URL says that others can reach this server, so ROOFDOWN_SECRET is needed.',
    ],
    [
      outside && settings.ROOFDOWN_KEY === undefined,
      'ROOFDOWN_KEY is needed: it keeps numbers unreadable and links unguessable. Make one: openssl rand -base64 32',
    ],
    [
      phones && settings.ROOFDOWN_PUBLIC_URL === undefined,
      'ROOFDOWN_PUBLIC_URL is needed for text messages and Telegram: the https address under which they reach this server.',
    ],
    [
      (settings.ROOFDOWN_DELIVER_TO === undefined) !== (settings.ROOFDOWN_DELIVER_SECRET === undefined),
      'ROOFDOWN_DELIVER_TO and ROOFDOWN_DELIVER_SECRET go together: set both or neither.',
    ],
    [
      settings.ROOFDOWN_DATABASE_URL !== undefined && settings.ROOFDOWN_DATABASE_FILE !== undefined,
      'ROOFDOWN_DATABASE_URL and ROOFDOWN_DATABASE_FILE name two stores: set one of them.',
    ],
  ];
  return checks.flatMap(([wrong, what]) => (wrong ? [what] : []));
}

function unknownNames(env: Readonly<Record<string, string | undefined>>): string[] {
  const known = new Set([...Object.keys(ServeEnvironment.shape), 'ROOFDOWN_DEBUG']);
  return Object.keys(env).filter((name) => name.startsWith('ROOFDOWN_') && !known.has(name));
}

/**
 * Reads the settings from the environment. Throws a ProgramError that names every fault at once, by its variable and
 * what to do, never with the value of a secret.
 */
export function readServeSettings(env: Readonly<Record<string, string | undefined>>): ServeSettings {
  const set = Object.fromEntries(
    Object.entries(env).filter(([, value]) => value !== undefined && value !== ''),
  );
  const parsed = ServeEnvironment.safeParse(set);
  const faults = parsed.success
    ? conflicts(parsed.data)
    : parsed.error.issues.map(({ path, message }) => `${path.join('.')} ${message}.`);
  const all = [...faults, ...unknownNames(set).map((name) => `${name} is not a setting.`)];
  if (parsed.success && all.length === 0) return parsed.data;
  throw new ProgramError(`The settings cannot be used:\n${all.map((one) => `  ${one}`).join('\n')}`);
}
