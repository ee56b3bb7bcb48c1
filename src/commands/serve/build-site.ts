import { randomBytes } from 'node:crypto';
import type { ServerStore } from '../../conversation/ports.ts';
import type { Programme } from '../../conversation/programme.ts';
import type { WalkId, WalkRecord } from '../../conversation/record.ts';
import { callText } from '../../report/call-text.ts';
import { version } from '../../settings.ts';
import { parseJson, readStoredRecord } from '../../storage/stored-record.ts';
import { createHandOvers } from '../../webhook/hand-over/desk-hand-overs.ts';
import type { LogLine, Site, SiteSettings } from '../../webhook/site.ts';
import { listOf, makeReport } from '../make-report.ts';
import { wordingFor } from '../wording-for.ts';
import type { ServeSettings } from './read-settings.ts';

function siteSettings(settings: ServeSettings): SiteSettings {
  return {
    publicUrl: settings.ROOFDOWN_PUBLIC_URL,
    // Without one nobody else can reach the server; ids and links then last as long as it runs.
    key: settings.ROOFDOWN_KEY ?? randomBytes(32),
    jsonKey: settings.ROOFDOWN_SECRET,
    smsToken: settings.ROOFDOWN_SMS_TOKEN,
    smsSignatureHeader: settings.ROOFDOWN_SMS_SIGNATURE_HEADER,
    telegramSecret: settings.ROOFDOWN_TELEGRAM_SECRET,
    metricsToken: settings.ROOFDOWN_METRICS_TOKEN,
    linkHours: settings.ROOFDOWN_LINK_HOURS,
    bodyBytes: settings.ROOFDOWN_BODY_BYTES,
    messagesPerMinute: settings.ROOFDOWN_MESSAGES_PER_MINUTE,
    startsPerMinute: settings.ROOFDOWN_STARTS_PER_MINUTE,
  };
}

/** What the server brings along. */
export interface SiteParts {
  readonly programme: Programme;
  readonly store: ServerStore;
  readonly clock: () => Date;
  readonly log: (line: LogLine) => void;
  readonly ready: () => boolean;
}

type MakeReport = Site['makeReport'];

/** A report of one record is made once a day and format: making one costs as much as a hundred turns. */
function rememberReports(make: MakeReport, clock: () => Date): MakeReport {
  const made = new WeakMap<WalkRecord, Map<string, string>>();
  return (record, format) => {
    const known = made.get(record) ?? new Map<string, string>();
    const key = `${format} ${clock().toISOString().slice(0, 10)}`;
    const text = known.get(key) ?? make(record, format);
    made.set(record, known.set(key, text));
    return text;
  };
}

/** A walk that somebody sent or that was sealed, checked as one from a store. */
function readWalk(json: string): WalkRecord | undefined {
  const data = parseJson(json);
  const id = data.kind === 'read' ? (data.value as { id?: unknown } | null)?.id : undefined;
  if (typeof id !== 'string') return undefined;
  const read = readStoredRecord(json, id as WalkId);
  return read.kind === 'read' ? read.value : undefined;
}

/** Puts the parts of a server together into what the webhook needs. */
export function buildSite(settings: ServeSettings, { programme, store, clock, log, ready }: SiteParts): Site {
  const { checklist } = programme;
  const report = rememberReports((record, format) => makeReport(checklist, record, clock(), format), clock);
  const given = siteSettings(settings);
  const list = (record: WalkRecord) => listOf(checklist, record, clock());
  const handOvers = createHandOvers({
    store: store.handOvers,
    key: given.key,
    clock,
    hours: settings.ROOFDOWN_CODE_HOURS,
    reach: settings.ROOFDOWN_REACH,
    keptDays: settings.ROOFDOWN_KEEP_DAYS,
    address: settings.ROOFDOWN_PUBLIC_URL,
    readWalk,
  });
  return {
    shell: { programme, store, clock, handOvers, announces: settings.ROOFDOWN_DELIVER_TO !== undefined },
    settings: given,
    readWalk,
    wordingFor: (record) => wordingFor(checklist, record),
    makeReport: report,
    firstJobs: (record, count) => {
      const first = count > 0 ? list(record).jobs.slice(0, count) : [];
      return first.map((job) => job.do.replaceAll('**', ''));
    },
    callText: (record) => callText(list(record), wordingFor(checklist, record)),
    log,
    version,
    ready,
  };
}
