import type { Say } from './say.ts';
import type { WordedAsk, WordedBlock, WordedReply } from './worded.ts';
import type { Wording } from './wording.ts';

/** The parts of a reply that are put into words here; a conversation's reply has this shape. */
interface ReplyToWord {
  readonly parts: readonly (
    | ({ readonly kind: 'say'; readonly tone: WordedBlock['tone'] } & Say)
    | { readonly kind: 'readBack'; readonly stop: string; readonly lines: readonly Say[] }
    | { readonly kind: 'report' }
  )[];
  readonly ask?: {
    readonly say: Say;
    readonly choices: readonly {
      readonly id: string;
      readonly number: number;
      readonly letter: string;
      readonly label: Say;
    }[];
    readonly several: boolean;
    readonly hint: Say;
    readonly guide?: { readonly listen: Say; readonly cannotTell: Say };
  };
}

/** Emphasis marks of the flow's own sentences mean nothing on a plain line. */
const withoutMarks = (text: string) => text.replaceAll('**', '');

function say(wording: Wording, { text, values }: Say): string {
  return withoutMarks(wording.text(text, values));
}

type Guide = NonNullable<NonNullable<ReplyToWord['ask']>['guide']>;

const wordGuide = (wording: Wording, { listen, cannotTell }: Guide) => ({
  listen: say(wording, listen),
  cannotTell: say(wording, cannotTell),
});

function wordAsk(wording: Wording, ask: NonNullable<ReplyToWord['ask']>): WordedAsk {
  return {
    question: say(wording, ask.say),
    choices: ask.choices.map(({ label, ...choice }) => ({ ...choice, label: say(wording, label) })),
    several: ask.several,
    hint: say(wording, ask.hint),
    ...(ask.guide ? { guide: wordGuide(wording, ask.guide) } : {}),
  };
}

/** Puts a reply into words for one reader. */
export function wordReply(reply: ReplyToWord, wording: Wording): WordedReply {
  const blocks = reply.parts.map((part): WordedBlock => {
    if (part.kind === 'report') return { kind: 'report', tone: 'plain', lines: [] };
    if (part.kind === 'say') return { kind: 'say', tone: part.tone, lines: say(wording, part).split('\n') };
    const title = withoutMarks(wording.text(`stop/${part.stop}/title`));
    return {
      kind: 'readBack',
      tone: 'plain',
      lines: [title, ...part.lines.map((line) => say(wording, line))],
    };
  });
  return { blocks, ...(reply.ask ? { ask: wordAsk(wording, reply.ask) } : {}) };
}
