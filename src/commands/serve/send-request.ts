/** How long the receiver of a finished walk may take. */
const patienceMilliseconds = 10_000;

/** Posts a body and gives the status; redirects are not followed, so that a report goes nowhere else. */
export async function sendRequest(
  url: string,
  headers: Record<string, string>,
  body: string,
): Promise<number> {
  const signal = AbortSignal.timeout(patienceMilliseconds);
  const response = await fetch(url, { method: 'POST', headers, body, redirect: 'manual', signal });
  await response.body?.cancel();
  return response.status;
}
