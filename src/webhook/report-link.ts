import { createHmac } from 'node:crypto';
import type { WalkId } from '../conversation/record.ts';
import { sameText } from './same-text.ts';
import type { Site } from './site.ts';

const signatureOf = (key: Uint8Array, text: string) =>
  createHmac('sha256', key)
    .update(JSON.stringify(['report', text]))
    .digest('base64url');

/** A token that opens the report of one walk until a moment, for whoever has it. */
export function reportToken(key: Uint8Array, walk: WalkId, until: Date): string {
  const text = `${walk}.${Math.floor(until.getTime() / 1000).toString(36)}`;
  return `${text}.${signatureOf(key, text)}`;
}

/** The walk that a token opens now; `over` when its time is up, nothing when it was not made here. */
export function readReportToken(key: Uint8Array, token: string, now: Date): WalkId | 'over' | undefined {
  const parts = /^([A-Za-z0-9_-]{1,100})\.([0-9a-z]{1,9})\.([A-Za-z0-9_-]{43})$/u.exec(token);
  if (!parts) return undefined;
  const [, walk = '', until = '', signature = ''] = parts;
  if (!sameText(signature, signatureOf(key, `${walk}.${until}`))) return undefined;
  return Number.parseInt(until, 36) * 1000 > now.getTime() ? (walk as WalkId) : 'over';
}

/** The public address of a report with the day until which it works; nothing without a public address. */
export function reportLink(
  { settings, shell }: Site,
  walk: WalkId,
): { link: string; date: string } | undefined {
  if (settings.publicUrl === undefined) return undefined;
  const until = new Date(shell.clock().getTime() + settings.linkHours * 3_600_000);
  const token = reportToken(settings.key, walk, until);
  return { link: `${settings.publicUrl}/r/${token}`, date: until.toISOString().slice(0, 10) };
}
