// Runs of a campaign: the last one, a new one, and how far it is.
import { ask, get, Problem } from './api.js';

const POLL_MS = 700;
const base = id => `/api/campaigns/${encodeURIComponent(id)}/runs`;
const ENDED = new Set(['done', 'failed', 'cancelled', 'stopped']);

/** The last run that came to its end with what changed since, or null. */
export async function latest(id) {
  try {
    return (await get(`${base(id)}/latest`)).body;
  } catch (problem) {
    if (problem instanceof Problem && problem.status === 404) return null;
    throw problem;
  }
}

/** The last runs, newest first. */
export const list = async (id, limit = 10) => (await get(`${base(id)}?limit=${limit}`)).body.items;
export const start = async (id, asking = {}) => (await ask('POST', base(id), { body: asking })).body;
export const cancel = async (id, number) => (await ask('DELETE', `${base(id)}/${number}`)).body;
export const pair = async (id, number, a, b) => (await get(`${base(id)}/${number}/pair?a=${a}&b=${b}`)).body;
export const preference = async (id, number, alpha) => (await get(`${base(id)}/${number}/preference?alpha=${alpha}`)).body;
export const going = run => Boolean(run) && !ENDED.has(run.status);

/**
 * Follows a run to its end: by events, and by asking now and then where those do not come.
 * told({done, total, doing, first}) each time; the promise gives {status, trouble}. stop() leaves it.
 */
export function follow(id, number, told) {
  let stop;
  const ended = new Promise(resolve => {
    let over = false;
    const finish = value => { if (!over) { over = true; resolve(value); } };
    const events = new EventSource(`${base(id)}/${number}/events`);
    stop = () => { events.close(); finish(null); };
    events.addEventListener('progress', event => { if (!over) told(JSON.parse(event.data)); });
    events.addEventListener('ended', event => { events.close(); finish(JSON.parse(event.data)); });
    events.addEventListener('error', () => { events.close(); if (!over) poll(); });
    const poll = async () => {
      while (!over) {
        try {
          const { body } = await get(`${base(id)}/${number}`);
          if (body.progress) told(body.progress);
          if (!going(body.run)) { finish({ status: body.run.status, trouble: body.run.trouble }); return; }
        } catch { /* asked again after the pause */ }
        await new Promise(wait => { setTimeout(wait, POLL_MS); });
      }
    };
  });
  return { ended, stop };
}
