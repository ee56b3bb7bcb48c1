import { Hono } from 'hono';
import type { Desk } from './answer-message.ts';
import type { Connection } from './json/json-channel.ts';
import { readSigned } from './json/read-request.ts';
import { HttpProblem } from './problem.ts';

const states = ['waiting', 'sent', 'dead'] as const;

/** The outbox for its operator: what waits, what was sent, what is dead, and a dead one sent again. */
export function deliveriesRoutes({ site }: Desk): Hono<Connection> {
  const app = new Hono<Connection>();
  const { deliveries } = site.shell.store;

  app.get('/deliveries', async (c) => {
    await readSigned(site, c.req.raw);
    const asked = c.req.query('state') ?? 'dead';
    const state = states.find((one) => one === asked);
    if (!state) throw new HttpProblem('not-valid', `state: one of ${states.join(', ')}`);
    return Response.json(await deliveries.list(state, 100), { headers: { 'cache-control': 'no-store' } });
  });

  app.post('/deliveries/:id/resend', async (c) => {
    await readSigned(site, c.req.raw);
    const waits = await deliveries.resend(c.req.param('id'), site.shell.clock().toISOString());
    if (!waits) throw new HttpProblem('unknown-delivery');
    return new Response(null, { status: 202 });
  });

  return app;
}
