const plain = (text: string) => text.toLowerCase().replace(/\s+/g, ' ').trim();

/** Whether a text is one of these phrases and nothing else. */
export function isPhrase(text: string, phrases: readonly string[]): boolean {
  const said = plain(text).replace(/(?:[.:!,]|,? please)+$/u, '');
  return phrases.some((phrase) => said === phrase);
}

/** What follows when a text begins with one of these phrases; empty when nothing does. */
export function afterPhrase(text: string, phrases: readonly string[]): string | undefined {
  const lower = text.toLowerCase();
  const found = [...phrases]
    .sort((a, b) => b.length - a.length)
    .find((phrase) => lower.startsWith(phrase) && !/^[\p{L}\p{N}'-]/u.test(lower.slice(phrase.length)));
  return found === undefined ? undefined : text.slice(found.length).replace(/^[\s:,;-]+/u, '');
}

/** A text without one of these phrases at its beginning or end. */
export function withoutAside(text: string, phrases: readonly string[]): string {
  const start = afterPhrase(text, phrases) ?? text;
  const lower = start.toLowerCase();
  const end = phrases.find((phrase) => new RegExp(`[\\s,;]${phrase}[.!]?$`, 'u').test(lower));
  return end === undefined ? start : start.slice(0, lower.lastIndexOf(end)).replace(/[\s,;]+$/u, '');
}
