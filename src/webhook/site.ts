import type { ServerStore } from '../conversation/ports.ts';
import type { WalkRecord } from '../conversation/record.ts';
import type { Shell } from '../conversation/shell.ts';
import type { CallText } from '../report/call-text.ts';
import type { ReportFormat } from '../report/formats.ts';
import type { Wording } from '../wording/wording.ts';
import type { DeskHandOvers } from './hand-over/desk-hand-overs.ts';

/** A line of the log. It holds no answer, no number, no id of a walk and no text of an error. */
export interface LogLine {
  readonly level: 'info' | 'warn' | 'error';
  readonly what: string;
  readonly [field: string]: string | number | boolean | undefined;
}

/** Secrets and addresses of the site, as the settings gave them; a channel without its secret is not served. */
export interface SiteSettings {
  /** `https://…` without a slash at the end; never taken from a request. */
  readonly publicUrl: string | undefined;
  /** Key of the hashes of numbers, ids of walks and report links. */
  readonly key: Uint8Array;
  /** Key of the Standard Webhooks signatures of the JSON channel; without it requests need none. */
  readonly jsonKey: Uint8Array | undefined;
  readonly smsToken: string | undefined;
  readonly smsSignatureHeader: string;
  readonly telegramSecret: string | undefined;
  /** For `/metrics`; without it they are shown only while there is no public address. */
  readonly metricsToken: string | undefined;
  readonly linkHours: number;
  readonly bodyBytes: number;
  readonly messagesPerMinute: number;
  readonly startsPerMinute: number;
}

/** What the webhook needs from outside. */
export interface Site {
  readonly shell: Shell & { readonly store: ServerStore; readonly handOvers: DeskHandOvers };
  /** A walk from its JSON text; nothing when it is none. */
  readonly readWalk: (json: string) => WalkRecord | undefined;
  readonly settings: SiteSettings;
  readonly wordingFor: (record: WalkRecord) => Wording;
  readonly makeReport: (record: WalkRecord, format: ReportFormat) => string;
  /** The first jobs of the list in words, at most `count`. */
  readonly firstJobs: (record: WalkRecord, count: number) => readonly string[];
  /** The text that a volunteer sends after a call. */
  readonly callText: (record: WalkRecord) => CallText;
  readonly log: (line: LogLine) => void;
  readonly version: string;
  /** Whether the server still takes new work. */
  readonly ready: () => boolean;
}
