import { signedRequest } from '../channel-contract.ts';
import { openSettings, type TestSite, testSite } from '../test-site.ts';

/** The body of a reply, as far as it is looked at. */
export interface Body {
  readonly walk: string;
  readonly phase: string;
  readonly ask: {
    readonly key: string;
    readonly guide: { listen: string; cannotTell: string } | null;
  } | null;
  readonly said: readonly { readonly lines: readonly string[] }[];
  readonly textToSend: string | null;
}

/** What a reply says. */
export const words = ({ said }: Body) => said.flatMap((one) => one.lines).join('\n');

/** A volunteer or resident on the JSON channel. */
export function jsonTalk(site: TestSite, name: string) {
  let walk = '';
  let count = 0;
  const post = async (body: object) => {
    count += 1;
    const path = walk === '' ? '/walks' : `/walks/${walk}/messages`;
    const response = await site.webhook.fetch(
      signedRequest(site, path, `${name}-${count}`, JSON.stringify(body)),
    );
    const reply = (await response.json()) as Body;
    walk = reply.walk;
    return reply;
  };
  return {
    start: (body: object = {}) => post(body),
    type: (text: string) => post({ text }),
    walk: () => walk,
  };
}

/** What is typed from the start of a call to its first answers. */
export const opening = [
  'no',
  'at home',
  'yes',
  'yes',
  '555-0142',
  'tamber county',
  'note two dogs',
  'roof covering: tile',
];

/** A call up to the moment at which the caller agrees that it is handed over. */
export async function callHandedOver(
  site: TestSite,
  asked: 'hand over' | 'hand over to a colleague' = 'hand over',
) {
  const volunteer = jsonTalk(site, 'volunteer');
  await volunteer.start({ audience: 'volunteer' });
  for (const line of [...opening, asked]) await volunteer.type(line);
  const told = await volunteer.type('yes');
  const code = /Code: ([\d-]{14})/u.exec(words(told))?.[1] ?? '';
  return { volunteer, told, code };
}

/** A server on the open network with every channel. */
export const openSite = (env: Record<string, string> = {}) => testSite({ ...openSettings, ...env });
