import { Hono } from 'hono';
import { bodyLimit } from 'hono/body-limit';
import { createDesk, type Desk, describeError } from './answer-message.ts';
import { deliveriesRoutes } from './deliveries-routes.ts';
import { handOverRoutes } from './hand-over/hand-over-routes.ts';
import { type Connection, jsonChannel } from './json/json-channel.ts';
import { openApi } from './json/openapi.ts';
import type { Metrics } from './metrics.ts';
import { HttpProblem, problemResponse, problems } from './problem.ts';
import { readReportToken } from './report-link.ts';
import { loadWalk, reportResponse } from './report-response.ts';
import { routeOf } from './route-of.ts';
import { sameText } from './same-text.ts';
import type { Site } from './site.ts';
import { smsChannel } from './sms/sms-channel.ts';
import { telegramChannel } from './telegram/telegram-channel.ts';

/** The webhook: a request in, a response out, no server needed. */
export interface Webhook {
  readonly fetch: (request: Request, connection?: Connection['Bindings']) => Response | Promise<Response>;
  readonly metrics: Metrics;
}

/** Everything that an operator asks for. */
function operatorRoutes({ site, metrics }: Desk): Hono<Connection> {
  const app = new Hono<Connection>();
  const { metricsToken, publicUrl } = site.settings;
  const api = JSON.stringify(openApi(site.version, publicUrl));
  app.get('/healthz', (c) => c.text('ok\n'));
  app.get('/readyz', async (c) => {
    if (!site.ready()) return c.text('stopping\n', 503);
    try {
      await site.shell.store.ping();
      return c.text('ok\n');
    } catch {
      return c.text('the store cannot be used\n', 503);
    }
  });
  app.get('/metrics', (c) => {
    const token = /^Bearer (.+)$/u.exec(c.req.header('authorization') ?? '')?.[1] ?? '';
    const open = metricsToken === undefined ? publicUrl === undefined : sameText(token, metricsToken);
    if (!open) throw new HttpProblem('unknown-path');
    return c.body(metrics.text(), 200, { 'content-type': 'text/plain; version=0.0.4; charset=utf-8' });
  });
  app.get('/openapi.json', (c) => c.body(api, 200, { 'content-type': 'application/json' }));
  app.get('/problems/:code', (c) => {
    const code = c.req.param('code');
    if (!Object.hasOwn(problems, code)) throw new HttpProblem('unknown-path');
    return c.text(`${problems[code as keyof typeof problems].title}\n`);
  });
  return app;
}

/** Reports for whoever has a link. */
function linkRoutes({ site }: Desk): Hono<Connection> {
  const app = new Hono<Connection>();
  app.get('/r/:token', async (c) => {
    const walk = readReportToken(site.settings.key, c.req.param('token'), site.shell.clock());
    if (walk === undefined) throw new HttpProblem('unknown-path');
    if (walk === 'over') throw new HttpProblem('link-over');
    const wanted = {
      format: c.req.query('format'),
      accept: c.req.header('accept'),
      otherwise: 'html',
    } as const;
    return reportResponse(site, await loadWalk(site, walk), wanted);
  });
  return app;
}

function problemOf(site: Site, error: unknown): HttpProblem {
  if (error instanceof HttpProblem) return error;
  site.log({ level: 'error', what: 'fault', ...describeError(error) });
  const away = error instanceof Error && error.name === 'StorageError';
  return away ? new HttpProblem('unavailable', undefined, { 'retry-after': '2' }) : new HttpProblem('fault');
}

/** Counts and logs each request by its route, never by its path. */
function observe(app: Hono<Connection>, { site, metrics }: Desk): void {
  app.use(async (c, next) => {
    const started = performance.now();
    metrics.inFlight.value += 1;
    await next();
    metrics.inFlight.value -= 1;
    const seconds = (performance.now() - started) / 1000;
    const route = routeOf(c.req.path);
    const { status } = c.res;
    metrics.count('roofdown_requests_total', { route, status: String(status) });
    metrics.time(route, seconds);
    const milliseconds = Math.round(seconds * 10_000) / 10;
    site.log({ level: 'info', what: 'request', method: c.req.method, route, status, milliseconds });
  });
}

/** Builds the webhook of a site. Channels without their secret are not there. */
export function createWebhook(site: Site): Webhook {
  const desk = createDesk(site);
  const { smsToken, telegramSecret, bodyBytes } = site.settings;
  const app = new Hono<Connection>();
  observe(app, desk);
  app.use(bodyLimit({ maxSize: bodyBytes, onError: () => problemResponse(new HttpProblem('too-large')) }));
  app.route('/', operatorRoutes(desk));
  app.route('/', linkRoutes(desk));
  app.route('/', jsonChannel(desk));
  app.route('/', handOverRoutes(desk));
  app.route('/', deliveriesRoutes(desk));
  if (smsToken !== undefined) app.route('/', smsChannel(desk, smsToken));
  if (telegramSecret !== undefined) app.route('/', telegramChannel(desk, telegramSecret));
  const absent = new Set(['other']);
  if (smsToken === undefined) absent.add('/sms');
  if (telegramSecret === undefined) absent.add('/telegram');
  app.notFound((c) =>
    problemResponse(new HttpProblem(absent.has(routeOf(c.req.path)) ? 'unknown-path' : 'wrong-method')),
  );
  app.onError((error) => problemResponse(problemOf(site, error)));
  return { fetch: (request, connection) => app.fetch(request, connection ?? {}), metrics: desk.metrics };
}
