import { createDecipheriv, createHmac } from 'node:crypto';
import { describe, expect, it } from 'vitest';
import { codeKey, seal, unseal } from '../../../src/webhook/hand-over/seal.ts';

const key = new Uint8Array(32).fill(7);
const other = new Uint8Array(32).fill(8);

describe('what waits under a code', () => {
  it('is read with the code and the key, and with nothing else', () => {
    const sealed = seal(key, '1', 'front: wood 🏠');
    expect(unseal(key, '1', sealed)).toBe('front: wood 🏠');
    expect(unseal(key, '2', sealed)).toBeUndefined();
    expect(unseal(other, '1', sealed)).toBeUndefined();
    expect(unseal(key, '1', 'AAAA')).toBeUndefined();
    expect(unseal(key, '1', `${sealed.slice(0, -4)}AAAA`)).toBeUndefined();
  });

  it('is sealed anew each time, so that two that are alike do not look alike', () => {
    expect(seal(key, '1', 'x')).not.toBe(seal(key, '1', 'x'));
    expect(codeKey(key, '1')).not.toBe(codeKey(other, '1'));
  });

  // NIST SP 800-38D 8.2: a 96-bit IV and a 128-bit tag; opened here by the parts, without our code.
  it('is AES-256-GCM with the tag after the IV', () => {
    const bytes = Buffer.from(seal(key, '1', 'wood'), 'base64');
    const secret = createHmac('sha256', key).update('["hand-over seal","1"]').digest();
    const open = createDecipheriv('aes-256-gcm', secret, bytes.subarray(0, 12));
    open.setAuthTag(bytes.subarray(12, 28));
    expect(Buffer.concat([open.update(bytes.subarray(28)), open.final()]).toString()).toBe('wood');
  });
});
