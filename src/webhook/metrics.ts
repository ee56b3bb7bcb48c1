/** Upper ends of the buckets of times, in seconds. */
const buckets = [0.001, 0.0025, 0.005, 0.01, 0.025, 0.05, 0.1, 0.25, 0.5, 1, 2.5, 5];

type Labels = Readonly<Record<string, string>>;

const counters = {
  roofdown_requests_total: 'Requests answered, by route and status.',
  roofdown_turns_total: 'Turns kept or repeated, by channel and the phase after.',
  roofdown_emergencies_total: 'Replies with the order to leave, by channel.',
  roofdown_limited_total: 'Messages over the rate limit, by channel.',
  roofdown_store_failures_total: 'Turns that could not be kept, by channel.',
  roofdown_deliveries_total: 'Attempts to deliver a finished walk, by outcome.',
} as const;

/** Counts and times, in the Prometheus text format 0.0.4; they name no person and no walk. */
export interface Metrics {
  readonly count: (name: keyof typeof counters, labels: Labels) => void;
  /** Seconds that a request took. */
  readonly time: (route: string, seconds: number) => void;
  readonly inFlight: { value: number };
  readonly text: () => string;
}

const escaped = (value: string) => value.replace(/[\\"\n]/gu, (one) => (one === '\n' ? '\\n' : `\\${one}`));
const labelled = (labels: Labels) => {
  const list = Object.entries(labels).map(([name, value]) => `${name}="${escaped(value)}"`);
  return list.length > 0 ? `{${list.join(',')}}` : '';
};

function timesText(times: ReadonlyMap<string, { counts: number[]; sum: number; total: number }>): string[] {
  const name = 'roofdown_request_seconds';
  const lines = [...times].flatMap(([route, { counts, sum, total }]) => [
    ...buckets.map(
      (le, index) => `${name}_bucket${labelled({ route, le: String(le) })} ${counts[index] ?? 0}`,
    ),
    `${name}_bucket${labelled({ route, le: '+Inf' })} ${total}`,
    `${name}_sum${labelled({ route })} ${sum}`,
    `${name}_count${labelled({ route })} ${total}`,
  ]);
  return [`# HELP ${name} Time to answer a request, by route.`, `# TYPE ${name} histogram`, ...lines];
}

/** Makes empty metrics. Label values must come from a closed list, never from a request. */
export function createMetrics(): Metrics {
  const counts = new Map<string, Map<string, number>>();
  const times = new Map<string, { counts: number[]; sum: number; total: number }>();
  const inFlight = { value: 0 };
  const counterText = ([name, help]: [string, string]) => [
    `# HELP ${name} ${help}`,
    `# TYPE ${name} counter`,
    ...[...(counts.get(name) ?? [])].map(([labels, value]) => `${name}${labels} ${value}`),
  ];
  return {
    inFlight,
    count: (name, labels) => {
      const series = counts.get(name) ?? new Map<string, number>();
      const key = labelled(labels);
      counts.set(name, series.set(key, (series.get(key) ?? 0) + 1));
    },
    time: (route, seconds) => {
      const one = times.get(route) ?? { counts: buckets.map(() => 0), sum: 0, total: 0 };
      buckets.forEach((le, index) => {
        if (seconds <= le) one.counts[index] = (one.counts[index] ?? 0) + 1;
      });
      times.set(route, { counts: one.counts, sum: one.sum + seconds, total: one.total + 1 });
    },
    text: () =>
      [
        ...Object.entries(counters).flatMap(counterText),
        ...timesText(times),
        '# HELP roofdown_in_flight Requests being answered.',
        '# TYPE roofdown_in_flight gauge',
        `roofdown_in_flight ${inFlight.value}`,
        '',
      ].join('\n'),
  };
}
