import { createCipheriv, createDecipheriv, createHmac, randomBytes } from 'node:crypto';

const ivBytes = 12;
const tagBytes = 16;

const derived = (key: Uint8Array, what: string, code: string) =>
  createHmac('sha256', key)
    .update(JSON.stringify([what, code]))
    .digest();

/** Under what a store keeps a code: one way, and of no use without the key of the server. */
export function codeKey(key: Uint8Array, code: string): string {
  return derived(key, 'hand-over', code).toString('base64url');
}

/** A text that can be read with the code and the key of the server only (AES-256-GCM). */
export function seal(key: Uint8Array, code: string, text: string): string {
  const iv = randomBytes(ivBytes);
  const cipher = createCipheriv('aes-256-gcm', derived(key, 'hand-over seal', code), iv);
  const sealed = Buffer.concat([cipher.update(text, 'utf8'), cipher.final()]);
  return Buffer.concat([iv, cipher.getAuthTag(), sealed]).toString('base64');
}

/** The text that was sealed; nothing when the key or the code is another, or the text was changed. */
export function unseal(key: Uint8Array, code: string, sealed: string): string | undefined {
  const bytes = Buffer.from(sealed, 'base64');
  if (bytes.length < ivBytes + tagBytes) return undefined;
  const secret = derived(key, 'hand-over seal', code);
  const decipher = createDecipheriv('aes-256-gcm', secret, bytes.subarray(0, ivBytes));
  decipher.setAuthTag(bytes.subarray(ivBytes, ivBytes + tagBytes));
  try {
    const text = [decipher.update(bytes.subarray(ivBytes + tagBytes)), decipher.final()];
    return Buffer.concat(text).toString('utf8');
  } catch {
    return undefined;
  }
}
