// Runs of a campaign: the last one, a new one, and how far it is.
import { ask, get, Problem } from './api.js';

const POLL_MS = 700;
const BEAT_MS = 800;
const SILENCE_MS = 2000;
const CHANNEL = 'kerfbook-runs';
const LOCK = 'kerfbook-run-events';
const SHARED = Boolean(navigator.locks) && 'BroadcastChannel' in globalThis;
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
 * Follows a run to its end: told({done, total, doing, first}) each time; the promise gives {status, trouble}. stop() leaves it.
 * A browser keeps one stream of events, whatever the number of its tabs: it may hold six connections to a server, and a stream takes one.
 * The tab that has the lock reads the stream and tells the others; when it closes, the next in line has the lock. Who hears nothing asks.
 */
export function follow(id, number, told) {
  const key = `${id}/${number}`;
  const left = new AbortController();
  const { signal } = left;
  const news = SHARED ? new BroadcastChannel(CHANNEL) : null;
  let heard = Date.now();
  let stop;
  const ended = new Promise(resolve => {
    const finish = end => {
      if (signal.aborted) return;
      left.abort();
      resolve(end);
      setTimeout(() => news?.close());          // after the last word is out
    };
    stop = () => finish(null);
    const take = ({ kind, data }) => {
      heard = Date.now();
      if (kind === 'progress' && !signal.aborted) told(data);
      if (kind === 'ended') finish(data);
    };
    const tell = message => {
      news?.postMessage({ key, ...message });
      take(message);
    };
    if (news) news.onmessage = ({ data }) => { if (data.key === key) take(data); };
    const streaming = () => stream(`${base(id)}/${number}/events`, signal, tell).then(() => { heard = 0; });
    if (SHARED) navigator.locks.request(LOCK, { signal }, streaming).catch(() => { /* left before its turn */ });
    else streaming();
    const asking = async () => {
      while (!signal.aborted) {
        if (Date.now() - heard > SILENCE_MS) {
          try {
            const { body } = await get(`${base(id)}/${number}`);
            if (body.progress && !signal.aborted) told(body.progress);
            if (!going(body.run)) finish({ status: body.run.status, trouble: body.run.trouble });
          } catch { /* asked again after the pause */ }
        }
        await new Promise(wait => { setTimeout(wait, POLL_MS); });
      }
    };
    asking();
  });
  return { ended, stop };
}

/** Reads a stream until it ends, fails or is left, and lets the other tabs know meanwhile that it is read. */
function stream(address, signal, tell) {
  return new Promise(done => {
    const events = new EventSource(address);
    const beat = setInterval(() => tell({ kind: 'here' }), BEAT_MS);
    const close = () => { clearInterval(beat); events.close(); done(); };
    signal.addEventListener('abort', close);
    events.addEventListener('progress', event => tell({ kind: 'progress', data: JSON.parse(event.data) }));
    events.addEventListener('ended', event => { tell({ kind: 'ended', data: JSON.parse(event.data) }); close(); });
    events.addEventListener('error', close);
  });
}
