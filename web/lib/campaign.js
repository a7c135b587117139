// One campaign as the pages see it: its document, its forecast if it can be made, and what is missing if not.
import { get, Problem } from './api.js';

const kept = new Map();
let tables;

export function forget(id) {
  kept.delete(String(id));
}

/** @returns {Promise<{id, doc, forecast, missing, etag}>} forecast or missing is null */
export async function campaign(id) {
  const before = kept.get(id);
  const base = `/api/campaigns/${encodeURIComponent(id)}`;
  let forecast = null;
  let missing = null;
  let etag = null;
  try {
    const answer = await get(`${base}/forecast`, { none: before?.forecast ? before.etag : undefined });
    if (answer.status === 304) return before;
    forecast = answer.body;
    etag = answer.etag;
  } catch (problem) {
    if (!(problem instanceof Problem) || problem.status !== 422) throw problem;
    missing = problem.errors.length > 0 ? problem.errors : [{ field: '', detail: problem.message }];
  }
  const doc = (await get(`${base}/document`)).body;
  const fresh = { id, doc, forecast, missing, etag, byCode: index(doc) };
  kept.set(id, fresh);
  return fresh;
}

/** Rule sets, nuclides, techniques and difficulty factors of the tables; read once. */
export async function referenceTables() {
  tables ??= (await get('/api/tables')).body;
  return tables;
}

function index(doc) {
  const byCode = {};
  for (const [kind, objects] of Object.entries(doc)) {
    if (Array.isArray(objects)) byCode[kind] = new Map(objects.map(object => [object.code, object]));
  }
  return byCode;
}
