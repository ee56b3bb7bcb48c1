import { Hono } from 'hono';
import type * as z from 'zod';
import type { Parcel } from '../../conversation/hand-over/parcel.ts';
import type { WalkId } from '../../conversation/record.ts';
import type { Desk } from '../answer-message.ts';
import type { Connection } from '../json/json-channel.ts';
import { parseBody, readSigned } from '../json/read-request.ts';
import { LeaveBody, TakeBody } from '../json/schemas.ts';
import { leftId, seenId } from '../keyed-hash.ts';
import { HttpProblem } from '../problem.ts';

const noStore = { 'cache-control': 'no-store' };

/** For programs of volunteers: leave a walk under a code, take the walk under a code. */
export function handOverRoutes({ site }: Desk): Hono<Connection> {
  const app = new Hono<Connection>();
  const { handOvers } = site.shell;

  const parcelOf = ({ walk, to, since }: z.infer<typeof LeaveBody>): Parcel => {
    const record = site.readWalk(JSON.stringify(walk));
    if (!record) throw new HttpProblem('not-valid', 'walk: not a walk of this program.');
    return { walk: { ...record, id: leftId(site.settings.key, record.id) }, to, since };
  };

  app.get('/hand-overs', async (c) => {
    await readSigned(site, c.req.raw);
    const { hours, reach } = handOvers.terms();
    return Response.json({ hours, reach: reach ?? null }, { headers: noStore });
  });

  app.post('/hand-overs', async (c) => {
    const { body } = await readSigned(site, c.req.raw);
    const left = await handOvers.leaveParcel(parcelOf(parseBody(c.req.raw, body, LeaveBody)));
    if (left.kind === 'failed') throw new HttpProblem('unavailable', left.why, { 'retry-after': '60' });
    const { code, hours, reach } = left;
    return Response.json({ code, hours, reach: reach ?? null }, { status: 201, headers: noStore });
  });

  app.put('/hand-overs', async (c) => {
    const { body } = await readSigned(site, c.req.raw);
    await handOvers.renewParcel(parcelOf(parseBody(c.req.raw, body, LeaveBody)));
    return new Response(null, { status: 204 });
  });

  app.delete('/hand-overs', async (c) => {
    await readSigned(site, c.req.raw);
    await handOvers.withdraw(leftId(site.settings.key, c.req.query('walk') ?? ''));
    return new Response(null, { status: 204 });
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
