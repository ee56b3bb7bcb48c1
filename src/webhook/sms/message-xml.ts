const entities: Readonly<Record<string, string>> = {
  '&': '&amp;',
  '<': '&lt;',
  '>': '&gt;',
  '"': '&quot;',
  "'": '&apos;',
};

/** What XML 1.0 allows, escaped; anything else is left out. */
function xmlText(text: string): string {
  const allowed = text.replace(/[^\t\n\r\u0020-\ud7ff\ue000-\ufffd\u{10000}-\u{10ffff}]/gu, '');
  return allowed.replace(/[&<>"']/gu, (one) => entities[one] ?? '');
}

/** The answer to a form post: each message one element, in order; none when nothing is to be said. */
export function messageXml(messages: readonly string[]): string {
  const elements = messages.map((one) => `<Message>${xmlText(one)}</Message>`);
  return `<?xml version="1.0" encoding="UTF-8"?>\n<Response>${elements.join('')}</Response>\n`;
}
