/** A reply in words, for one reader; texts may hold light Markdown emphasis, and text typed by people never does. */
export interface WordedReply {
  readonly blocks: readonly WordedBlock[];
  readonly ask?: WordedAsk;
}

export interface WordedBlock {
  readonly kind: 'say' | 'readBack' | 'report';
  readonly tone: 'plain' | 'heading' | 'quiet' | 'warning' | 'emergency';
  /** One paragraph a line; empty for the place of the report. */
  readonly lines: readonly string[];
}

export interface WordedAsk {
  readonly question: string;
  readonly choices: readonly {
    readonly id: string;
    readonly number: number;
    readonly letter: string;
    readonly label: string;
  }[];
  readonly several: boolean;
  readonly hint: string;
  /** For a volunteer: what to listen for, and what to do if the caller cannot tell. */
  readonly guide?: { readonly listen: string; readonly cannotTell: string };
}
