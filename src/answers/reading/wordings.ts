import type { Text } from '../../flow/schema/base.ts';

/** Every wording of a text, one for each audience. */
export function wordings(text: Text): readonly string[] {
  if (typeof text === 'string') return [text];
  return [text.resident, text.volunteer, text.trainee].filter((one) => one !== undefined);
}
