import { Hono } from 'hono';
import type { WalkId } from '../../conversation/record.ts';
import type { Desk } from '../answer-message.ts';
import type { Connection } from '../json/json-channel.ts';
import { parseBody, readSigned } from '../json/read-request.ts';
import { LeaveBody, TakeBody } from '../json/schemas.ts';
import { seenId, walkOfStart } from '../keyed-hash.ts';
import { HttpProblem } from '../problem.ts';

const noStore = { 'cache-control': 'no-store' };

/** For programs of volunteers: leave a walk under a code, take the walk under a code. */
export function handOverRoutes({ site }: Desk): Hono<Connection> {
  const app = new Hono<Connection>();
  const { handOvers } = site.shell;

  app.get('/hand-overs', async (c) => {
    await readSigned(site, c.req.raw);
    const { hours, reach } = handOvers.terms();
    return Response.json({ hours, reach: reach ?? null }, { headers: noStore });
  });

  app.post('/hand-overs', async (c) => {
    const { messageId, body } = await readSigned(site, c.req.raw);
    const { walk } = parseBody(c.req.raw, body, LeaveBody);
    const record = site.readWalk(JSON.stringify(walk));
    if (!record) throw new HttpProblem('not-valid', 'walk: not a walk of this program.');
    // The same for each repetition, so that one walk waits under one code.
    const id = walkOfStart(site.settings.key, messageId).replace('walk_', 'left_') as WalkId;
    const left = await handOvers.leave({ ...record, id }, record.revision);
    if (left.kind === 'failed') throw new HttpProblem('unavailable', left.why, { 'retry-after': '60' });
    const { code, hours, reach } = left;
    return Response.json({ code, hours, reach: reach ?? null }, { status: 201, headers: noStore });
  });

  app.post('/hand-overs/take', async (c) => {
    const { messageId, body } = await readSigned(site, c.req.raw);
    const { code } = parseBody(c.req.raw, body, TakeBody);
    const by = messageId === undefined ? crypto.randomUUID() : seenId('' as WalkId, messageId);
    const walk = await handOvers.take(code, by);
    if (!walk) throw new HttpProblem('unknown-code');
    return Response.json({ walk }, { headers: noStore });
  });

  return app;
}
