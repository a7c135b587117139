// What the dosimetry service found for a person, beside the sum of the electronic readings of the same days.
import { html, live, nothing } from '../lib/vendor.js';
import { ask, get } from '../lib/api.js';
import { say } from '../lib/focus.js';
import { may } from '../lib/who.js';
import { typed } from '../lib/typed.js';
import { day, fixed, msv } from '../lib/units.js';

const base = (camp, worker) => `/api/campaigns/${encodeURIComponent(camp.id)}/people/${encodeURIComponent(worker)}`;
const empty = () => ({ from: '', to: '', usv: '', source: '' });
const LABELS = { from: 'First day', to: 'Last day', usv: 'Dose of record (µSv)', source: 'Source' };

/** Null for whom the dose of this person is not shown. */
export async function resultsOf(camp, worker) {
  try {
    const { body } = await get(`${base(camp, worker)}/results`);
    return { ...body, draft: empty(), faults: [] };
  } catch (problem) {
    if (problem.status === 403 || problem.status === 404) return null;
    throw problem;
  }
}

export function periodResults({ camp, worker, results, redraw }) {
  return html`<section class="panel" aria-labelledby="results-title"><div class="head"><h2 id="results-title">Dosimeter of record</h2>
      <p class="small">Whole record: <a href="${base(camp, worker)}/record.csv" download>CSV</a>, <a href="${base(camp, worker)}/record" download>JSON</a></p></div>
    ${results.items.length === 0 ? html`<p class="muted">No result of the dosimetry service yet.</p>` : table(results.items)}
    <p class="small muted" id="kept-until">Records of individuals are kept ${results.kept_years} years after the work${results.kept_until ? `, these at least until ${day(results.kept_until)}` : ''}.${may('GET', '/api/retention') ? html` <a href="#/records">How long, and why</a>` : nothing}</p>
    ${results.enters ? form(camp, worker, results, redraw) : nothing}</section>`;
}

const table = items => html`<div class="table" tabindex="0" role="region" aria-label="Results of the dosimeter of record"><table><thead><tr><th scope="col">Period</th><th scope="col" class="n">of record, mSv</th><th scope="col" class="n">readings, mSv</th><th scope="col" class="n">ratio</th><th scope="col">Source</th></tr></thead>
  <tbody>${items.map(item => html`<tr><th scope="row">${day(item.from)} to ${day(item.to)}${item.holds ? nothing : html`<span class="sub">replaced by a later result</span>`}</th><td class="n">${msv(item.usv)}</td><td class="n">${item.entries === 0 ? 'none' : msv(item.read_usv)}</td>
    <td class="n">${item.ratio === undefined ? '–' : fixed(item.ratio, 2)}</td><td>${item.source}<span class="sub">${item.noted_by}, ${day(item.noted_at.slice(0, 10))}</span></td></tr>`)}</tbody></table></div>
  <p class="small muted">Readings: electronic dosimeters of this campaign on these days. The dosimeter of record counts for limits.</p>`;

function form(camp, worker, results, redraw) {
  const { draft, faults } = results;
  const fault = name => faults.find(([field]) => field === name)?.[1];
  const field = (name, type, hint) => html`<div class="field ${fault(name) ? 'bad' : ''}"><label for="result-${name}">${LABELS[name]}</label>${fault(name) ? html`<span class="message" id="result-${name}-fault">${fault(name)}</span>` : nothing}
    <input id="result-${name}" type=${type} inputmode=${name === 'usv' ? 'decimal' : nothing} autocomplete="off" aria-invalid=${fault(name) ? 'true' : nothing} aria-describedby=${fault(name) ? `result-${name}-fault` : nothing}
      .value=${live(draft[name])} @input=${event => { draft[name] = event.target.value; }}>${hint ? html`<span class="hint">${hint}</span>` : nothing}</div>`;
  return html`<details ?open=${faults.length > 0}><summary>Add a result</summary><form novalidate aria-label="Result of the dosimeter of record" @submit=${event => { event.preventDefault(); add(camp, worker, results, redraw); }}>
    ${faults.length ? html`<div class="summary" id="result-faults" tabindex="-1" role="alert"><strong>Not added</strong><ul>${faults.map(([, words]) => html`<li>${words}</li>`)}</ul></div>` : nothing}
    <div class="fields">${field('from', 'date')}${field('to', 'date')}${field('usv', 'text')}${field('source', 'text', 'Service, report and date. The same days again replace the result.')}</div>
    <p class="doing"><button class="button decide" id="result-add">Add the result</button></p></form></details>`;
}

async function add(camp, worker, results, redraw) {
  const { draft } = results;
  const usv = typed(draft.usv);
  results.faults = ['from', 'to', 'source'].filter(name => draft[name].trim() === '').map(name => [name, `${LABELS[name]} is missing.`]);
  if (usv.value === undefined) results.faults.push(['usv', `${LABELS.usv} ${usv.blank ? 'is missing.' : usv.fault}`]);
  if (results.faults.length === 0) {
    try {
      const { body } = await ask('POST', `${base(camp, worker)}/results`, { body: { from: draft.from, to: draft.to, usv: usv.value, source: draft.source.trim() } });
      Object.assign(results, body, { draft: empty() });
      say('Result added.');
    } catch (problem) {
      results.faults = problem.errors?.length ? problem.errors.map(({ field, detail }) => [field, `${LABELS[field] ?? field} ${detail}`]) : [['', problem.message]];
    }
  }
  redraw();
  if (results.faults.length) document.getElementById('result-faults').focus();
}
