// Who changed what: rows that are only ever added, in words.
import { html, nothing } from '../lib/vendor.js';
import { ask, get } from '../lib/api.js';
import { kinds } from '../forms/kinds.js';
import { subnav } from '../elements/subnav.js';
import { link, withQuery } from '../lib/route.js';
import { plural, sentence } from '../lib/words.js';
import { day } from '../lib/units.js';

const PAGE = 50;
const KIND = {
  'campaign-edit': 'Edits of the plan', entry: 'Log entries', progress: 'Progress of tasks', decision: 'Decisions', run: 'Runs', review: 'Reviews',
  learnt: 'Learnt factors', release: 'Releases', account: 'Accounts', role: 'Roles', session: 'Sign-ins', token: 'Access tokens', retention: 'Keeping and removing records',
  backup: 'Backups',
};
const WHOLE = { 'campaign-added': 'added as a whole', 'campaign-removed': 'removed as a whole' };

export const title = ({ camp }) => `Trail of ${camp.doc.settings.name}`;

export async function load({ route, camp }) {
  const kind = route.search.get('kind') ?? '';
  const offset = Math.max(0, Number.parseInt(route.search.get('from') ?? '0', 10) || 0);
  const { body } = await get(`/api/trail?campaign=${camp.id}&offset=${offset}&limit=${PAGE}${kind ? `&kind=${encodeURIComponent(kind)}` : ''}`);
  return { ...body, kind, checked: null };
}

export function body({ camp, data, redraw }) {
  return html`
    <div class="lead"><div><h1>${data.total === 0 ? 'Nothing in the trail yet' : `${plural(data.total, 'change')} on record${data.kind ? `: ${KIND[data.kind].toLowerCase()}` : ''}`}</h1>
      <p class="under">Rows are added and never changed. Each carries a hash of the row before it, so that a row altered, left out or moved is found.</p></div>
      <div class="doing"><button class="button" @click=${() => check(data, redraw)}>Check the whole trail</button></div></div>
    ${subnav(camp, 'basis', 'trail')}
    <div class="grid"><section class="panel"><div class="head"><h2>The newest first</h2>${chooser(camp, data)}</div>
      <div role="status">${data.checked ? verdict(data.checked) : nothing}</div>
      ${data.items.length === 0 ? html`<p class="muted">No row of this kind.</p>` : table(camp, data)}${pager(camp, data)}</section></div>`;
}

const chooser = (camp, data) => html`<label class="small">Show <select id="trail-kind" @change=${event => { location.hash = withQuery(link(camp.id, 'trail'), event.target.value ? { kind: event.target.value } : {}); }}>
  <option value="" ?selected=${data.kind === ''}>all kinds</option>${Object.entries(KIND).map(([kind, words]) => html`<option value=${kind} ?selected=${kind === data.kind}>${words}</option>`)}</select></label>`;

async function check(data, redraw) {
  data.checked = (await ask('GET', '/api/trail/verify').catch(problem => ({ body: { problem: problem.message } }))).body;
  redraw();
}

const verdict = found => (found.problem ? html`<p>${found.problem}</p>`
  : html`<p><strong>${found.intact ? `The trail is whole: ${plural(found.rows, 'row')}.` : `${plural(found.faults_in_all, 'thing is', 'things are')} wrong in the trail.`}</strong>
    It ends with <code>${found.note}</code>. Note this on paper: only so a trail that somebody wrote anew in full is found.</p>
    ${found.faults.length ? html`<ul>${found.faults.map(fault => html`<li>${fault.text}</li>`)}</ul>` : nothing}`);

const table = (camp, data) => html`<div class="table" tabindex="0" role="region" aria-label="Trail"><table><thead><tr><th scope="col" class="n">Row</th><th scope="col">When, who</th><th scope="col">What</th></tr></thead>
  <tbody>${data.items.map(row => html`<tr><td class="n">${row.number}</td><td>${day(row.at.slice(0, 10))} ${row.at.slice(11, 16)} UTC<span class="sub">${row.who}</span></td><td>${what(camp, row)}</td></tr>`)}</tbody></table></div>`;

function what(camp, row) {
  if (WHOLE[row.what]) return html`The campaign was ${WHOLE[row.what]}`;
  return html`${subject(camp, row)} ${row.kind === 'campaign-edit' ? row.what : row.what.replace(/-/g, ' ')}
    ${row.changes.length ? html`<ul class="small bare">${row.changes.map(change => html`<li>${words(change.field)}: ${values(change)}</li>`)}${row.more ? html`<li>and ${plural(row.more, 'more value')}</li>` : nothing}</ul>` : nothing}`;
}

function subject(camp, row) {
  if (row.kind !== 'campaign-edit') return sentence(row.subject);
  const [kind, code] = row.subject.split(' ');
  if (!kinds[kind]) return sentence(row.subject);
  const name = sentence(kinds[kind].one);
  return camp.byCode[kind]?.has(code) ? html`${name} <a href=${link(camp.id, 'edit', kind, code)}>${code}</a>` : `${name} ${code}`;
}

const words = field => field.replace(/_/g, ' ').replace(/\busv\b/g, 'µSv').replace(/\[(\d+)\]/g, (_, n) => ` ${Number(n) + 1}`).replace(/\./g, ', ');
const values = change => (change.before === undefined ? change.after : change.after === undefined ? html`<del>${change.before}</del> taken out` : html`${change.before} <span aria-hidden="true">→</span><span class="spoken"> becomes </span> ${change.after}`);

function pager(camp, data) {
  const to = from => withQuery(link(camp.id, 'trail'), { kind: data.kind || undefined, from: from || undefined });
  return data.total <= PAGE ? nothing : html`<p class="pager">${data.offset > 0 ? html`<a href=${to(Math.max(0, data.offset - PAGE))}>Newer</a> ` : nothing}
    Rows ${data.offset + 1} to ${data.offset + data.items.length} of ${data.total}
    ${data.offset + data.items.length < data.total ? html` <a href=${to(data.offset + PAGE)}>Older</a>` : nothing}</p>`;
}
