const routes: readonly (readonly [RegExp, string])[] = [
  [/^\/walks$/u, '/walks'],
  [/^\/walks\/[^/]+$/u, '/walks/:id'],
  [/^\/walks\/[^/]+\/messages$/u, '/walks/:id/messages'],
  [/^\/walks\/[^/]+\/report$/u, '/walks/:id/report'],
  [/^\/r\/[^/]+$/u, '/r/:token'],
  [/^\/deliveries$/u, '/deliveries'],
  [/^\/deliveries\/[^/]+\/resend$/u, '/deliveries/:id/resend'],
  [/^\/hand-overs$/u, '/hand-overs'],
  [/^\/hand-overs\/take$/u, '/hand-overs/take'],
  [/^\/problems\/[^/]+$/u, '/problems/:code'],
  [/^\/(?:sms|telegram|healthz|readyz|metrics|openapi\.json)$/u, ''],
];

/** The route of a path, from a closed list, so that no id of a walk gets into logs and metrics. */
export function routeOf(path: string): string {
  const found = routes.find(([pattern]) => pattern.test(path));
  if (!found) return 'other';
  return found[1] === '' ? path : found[1];
}
