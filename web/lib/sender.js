// Sends what is kept on this tablet, oldest first. One tab sends at a time; what is refused waits for a person and holds nobody up.
import { ask } from './api.js';
import { mine } from './who.js';
import { all, announce, change, changed } from './outbox.js';

const EVERY_MS = 30000;
const PATIENCE_MS = 20000;
/** What is known about sending: id under way, when the last went out, what stands in the way. */
export const sending = { id: null, last: null, trouble: '' };
let waiting = false;
let started = false;

export function start() {
  if (started) return;
  started = true;
  window.addEventListener('online', send);
  document.addEventListener('visibilitychange', () => { if (!document.hidden) send(); });
  setInterval(send, EVERY_MS);
  changed.addEventListener('change', ({ detail }) => {
    if (detail.sending !== undefined) Object.assign(sending, detail.sending);
    if (detail.kept) send();
  });
  send();
}

/** Asks for a turn at sending, unless this tab waits for one already. */
export async function send() {
  if (waiting) return;
  waiting = true;
  try {
    await turn(async () => { waiting = false; await round(); });
  } catch (problem) {
    console.warn(problem);
  } finally {
    waiting = false;
  }
}

const turn = work => (navigator.locks ? navigator.locks.request('kerfbook-log-sender', work) : work());

async function round() {
  const tried = new Set();
  for (;;) {
    const next = (await all()).find(record => (record.state === 'kept' || record.state === 'handing') && mine(record) && !tried.has(record.id));
    if (!next) break;
    tried.add(next.id);
    note({ id: next.id });
    const goOn = await one(next).catch(problem => { console.warn(problem); return false; });
    note({ id: null });
    if (!goOn) break;
  }
}

/** @returns {Promise<boolean>} whether the next one may be tried */
async function one(record) {
  const base = `/api/campaigns/${encodeURIComponent(record.campaign)}`;
  const handing = record.state === 'handing';
  const path = handing ? `${base}/handed-in/${record.id}` : `${base}/entries/${record.id}`;
  const body = handing ? { entry: record.entry, refusal: (record.refusal ?? '').slice(0, 2000), reason: record.reason ?? '' } : record.entry;
  try {
    await ask('PUT', path, { body, quiet: true, headers: { 'Device-Time': new Date().toISOString() }, signal: AbortSignal.timeout(PATIENCE_MS) });
  } catch (problem) {
    return refused(record, problem);
  }
  await change(record.id, now => (same(now, record) ? { ...now, state: handing ? 'handed' : 'sent', sent_at: Date.now(), needs: [], refusal: handing ? now.refusal : '' } : null));
  note({ last: Date.now(), trouble: '' });
  return true;
}

/** What somebody changed meanwhile is another entry: its turn comes. */
const same = (now, then) => now.state === then.state && JSON.stringify(now.entry) === JSON.stringify(then.entry);

async function refused(record, problem) {
  if (problem.status === 401) {
    note({ trouble: 'Sign in again to send.' });
    return false;
  }
  if (problem.status === 0 || problem.status === 408 || problem.status === 429 || problem.status >= 500) {
    note({ trouble: problem.status === 0 ? 'No answer from the server.' : problem.message });
    return false;
  }
  if (problem.status === 422 && problem.needs.length === 0) {
    note({ trouble: problem.message });
    return true;
  }
  const fields = problem.errors.map(error => error.field);
  const words = problem.errors.length > 0 ? problem.errors.map(worded).join(' ') : problem.message;
  await change(record.id, now => (same(now, record)
    ? { ...now, state: 'needs', needs: problem.needs, refusal: problem.needs.length > 0 ? '' : words, fields, status: problem.status } : null));
  note({ last: Date.now(), trouble: '' });
  return true;
}

const LABEL = { worker: 'The person', task: 'The task', area: 'The area', on: 'The day', hours: 'Hours', usv: 'The dose', found_usv_per_h: 'The rate found', remark: 'The remark', made_at: 'The time', replaces: 'The correction' };
function worded({ field, detail }) {
  return LABEL[field] ? `${LABEL[field]} ${detail}` : detail.charAt(0).toUpperCase() + detail.slice(1);
}

function note(what) {
  Object.assign(sending, what);
  announce({ sending: what });
}

/** Sends one entry at once, where nothing can be kept; answers like ask. */
export const direct = (campaign, entry) => ask('PUT', `/api/campaigns/${encodeURIComponent(campaign)}/entries/${entry.id}`,
  { body: entry, headers: { 'Device-Time': new Date().toISOString() }, signal: AbortSignal.timeout(PATIENCE_MS) });
