// One campaign as the pages see it: its document, its forecast if it can be made, and what is missing if not.
import { get, Problem } from './api.js';

const kept = new Map();
const TRIES = 3;
let tables;

export function forget(id) {
  kept.delete(String(id));
}

/** @returns {Promise<{id, doc, forecast, missing, etag, byCode}>} forecast or missing is null */
export async function campaign(id) {
  const before = kept.get(id);
  for (let turn = 1; ; turn += 1) {
    const answer = await standing(id, before?.forecast ? before.etag : undefined);
    if (answer === 'unchanged') return before;
    const document = await get(`${address(id)}/document`);
    // Somebody may have saved between the two: both must be of one version.
    if (answer.forecast && document.etag && document.etag !== answer.etag && turn < TRIES) continue;
    const fresh = { id, doc: document.body, ...answer, byCode: index(document.body) };
    kept.set(id, fresh);
    return fresh;
  }
}

/** The forecast alone, or what it lacks; "unchanged" if the version is the one that is known. */
export async function standing(id, none) {
  try {
    const answer = await get(`${address(id)}/forecast`, { none });
    return answer.status === 304 ? 'unchanged' : { forecast: answer.body, missing: null, etag: answer.etag };
  } catch (problem) {
    if (!(problem instanceof Problem) || problem.status !== 422) throw problem;
    return { forecast: null, missing: problem.errors.length > 0 ? problem.errors : [{ field: '', detail: problem.message }], etag: null };
  }
}

/** Rule sets, nuclides, techniques and difficulty factors of the tables; read once. */
export async function referenceTables() {
  tables ??= (await get('/api/tables')).body;
  return tables;
}

const address = id => `/api/campaigns/${encodeURIComponent(id)}`;

function index(doc) {
  const byCode = {};
  for (const [kind, objects] of Object.entries(doc)) {
    if (Array.isArray(objects)) byCode[kind] = new Map(objects.map(object => [object.code, object]));
  }
  return byCode;
}
