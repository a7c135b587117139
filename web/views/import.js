// Readings of electronic dosimeters from a table: looked at first, then taken into the log, all that were confirmed or none.
import { html, live, nothing } from '../lib/vendor.js';
import { ask } from '../lib/api.js';
import { say } from '../lib/focus.js';
import { link } from '../lib/route.js';
import { dayShort, duration, plain } from '../lib/units.js';
import { nameOf, plural } from '../lib/words.js';

const MOST = 1_000_000;
const STATE = { new: 'new', asks: 'asks', kept: 'in the log already', repeated: 'said before', refused: 'not taken' };
const EXAMPLE = 'worker;task;date;area;hours;usv;remark';

export const title = ({ camp }) => `Dosimeter readings, ${camp.doc.settings.name}`;

export const load = () => ({ text: '', faults: [], preview: null, sure: new Set(), taken: null, busy: false });

export function body({ camp, data, redraw }) {
  return html`<div class="lead"><div><p class="crumb"><a href=${link(camp.id, 'log')}>Log</a></p><h1>${heading(data)}</h1>
      <p class="under">Readings of electronic dosimeters, pasted or from a file. They are shown first as what they are read; nothing is kept before you take them.</p></div></div>
    <div class="stack">
      <section class="panel stack"><h2>The table</h2>${table(camp, data, redraw)}</section>
      ${data.preview ? preview(camp, data, redraw) : nothing}</div>`;
}

function heading({ preview, taken }) {
  if (taken) return taken.kept === 0 ? 'These readings were in the log already' : `${plural(taken.kept, 'reading')} taken into the log`;
  if (!preview) return 'Bring in dosimeter readings';
  const good = preview.counts.new + preview.counts.asks;
  return good === 0 ? 'No row can be taken' : `${good} of ${plural(preview.rows.length, 'row')} can be taken`;
}

function table(camp, data, redraw) {
  return html`<form novalidate class="stack" @submit=${event => { event.preventDefault(); look(camp, data, redraw); }}>
    ${data.faults.length ? html`<div class="summary" id="import-faults" tabindex="-1" role="alert"><strong>Nothing was taken</strong><ul>${data.faults.map(words => html`<li>${words}</li>`)}</ul></div>` : nothing}
    <div class="field wide"><label for="import-text">Rows with their heading</label>
      <textarea id="import-text" rows="8" spellcheck="false" autocomplete="off" aria-describedby="import-hint" .value=${live(data.text)} @input=${event => { data.text = event.target.value; }}></textarea>
      <span class="hint" id="import-hint">First line: <code>${EXAMPLE}</code>, in any order, parted by semicolons, commas or tabs. Hours in h, dose in µSv, days like 2027-03-15. Persons by code, tasks and areas by code or name.</span></div>
    <div class="field wide"><label for="import-file">Or a file <span class="maybe">CSV or text, at most 1 MB</span></label><input id="import-file" type="file" accept=".csv,.txt,.tsv,text/csv,text/plain" @change=${event => fromFile(event.target, data, redraw)}></div>
    <p class="doing"><button class="button decide" id="import-look">Look at them</button></p></form>`;
}

async function fromFile(input, data, redraw) {
  const [file] = input.files;
  if (!file) return;
  data.faults = [];
  if (file.size > MOST) data.faults = [`The file has ${plain(file.size)} bytes; at most ${plain(MOST)} are read. Bring it in in parts.`];
  else data.text = await file.text();
  data.preview = null;
  data.taken = null;
  redraw();
}

async function look(camp, data, redraw) {
  data.taken = null;
  data.sure.clear();
  await trying(data, redraw, async () => {
    data.preview = null;
    data.preview = (await ask('POST', `/api/campaigns/${encodeURIComponent(camp.id)}/entries/preview`, { body: { lines: data.text.split(/\r\n|\n|\r/) } })).body;
  });
  if (data.preview) document.getElementById('import-result')?.focus();
}

async function trying(data, redraw, work) {
  if (data.busy) return;
  data.busy = true;
  data.faults = [];
  try {
    await work();
  } catch (problem) {
    data.faults = problem.errors?.length ? problem.errors.slice(0, 20).map(fault => sentence(fault)) : [problem.message];
  } finally {
    data.busy = false;
  }
  redraw();
  if (data.faults.length) document.getElementById('import-faults').focus();
}

const sentence = ({ field, detail }) => (field === '' ? `The row ${detail}` : field === 'lines' ? `The rows ${detail}` : `${field.replace(/^rows\[(\d+)\]\./, (_, n) => `Reading ${Number(n) + 1}, `).replace('usv', 'µSv')} ${detail}`);

function preview(camp, data, redraw) {
  const { rows, ignored } = data.preview;
  const open = rows.filter(row => row.state === 'asks' || row.state === 'refused');
  const rest = rows.filter(row => row.state !== 'asks' && row.state !== 'refused');
  const chosen = rows.filter(row => row.state === 'new' || (row.state === 'asks' && data.sure.has(row.line)));
  return html`<section class="panel stack" id="import-result" tabindex="-1" aria-labelledby="import-title"><h2 id="import-title">What they are read as</h2>
    <p>${Object.entries(STATE).filter(([state]) => data.preview.counts[state] > 0).map(([state, words]) => `${data.preview.counts[state]} ${words}`).join(', ')}.${ignored.length ? ` Columns not read: ${ignored.join(', ')}.` : ''}</p>
    ${open.length ? html`<h3>Rows that need you</h3>${shown(camp, data, open, redraw, 'Rows that need you')}` : nothing}
    ${rest.length ? html`<details ?open=${rest.length <= 50}><summary>${plural(rest.length, 'row')} without a question</summary>${shown(camp, data, rest.slice(0, 500), redraw, 'Rows without a question')}${rest.length > 500 ? html`<p class="small muted">and ${rest.length - 500} more.</p>` : nothing}</details>` : nothing}
    ${data.taken ? html`<p role="status"><strong>${plural(data.taken.kept, 'reading')} kept${data.taken.before ? `, ${data.taken.before} were there before` : ''}.</strong> <a href=${link(camp.id, 'log')}>To the log</a></p>`
    : html`<p class="doing"><button type="button" class="button decide" id="import-take" @click=${() => take(camp, data, chosen, redraw)}>Take ${plural(chosen.length, 'reading')}</button></p>`}</section>`;
}

const shown = (camp, data, rows, redraw, label) => html`<div class="table" tabindex="0" role="region" aria-label=${label}><table><thead><tr><th scope="col" class="n">Line</th><th scope="col">Who, when</th><th scope="col">Task</th><th scope="col" class="n">h</th><th scope="col" class="n">µSv</th><th scope="col">What becomes of it</th></tr></thead>
  <tbody>${rows.map(row => html`<tr data-state=${row.state}><th scope="row" class="n">${row.line}</th>${row.reading ? html`<td>${row.reading.worker}<span class="sub">${dayShort(row.reading.on)}</span></td><td>${taskName(camp, row.reading.task)}<span class="sub">${nameOf(camp, 'areas', row.reading.area)}${row.reading.remark ? `, ${row.reading.remark}` : ''}</span></td>
    <td class="n"><span class="nowrap" title=${duration(row.reading.hours)}>${plain(row.reading.hours)}</span></td><td class="n">${plain(row.reading.usv)}</td>` : html`<td colspan="4"><code>${row.text}</code></td>`}<td>${fate(data, row, redraw)}</td></tr>`)}</tbody></table></div>`;

function fate(data, row, redraw) {
  if (row.state === 'refused') return html`<span class="mark decide">${STATE.refused}</span><ul class="small bare">${row.errors.map(fault => html`<li>${sentence(fault)}</li>`)}</ul>`;
  if (row.state === 'repeated') return html`${STATE.repeated} in line ${row.same}; not taken. If it is other work, give it a remark.`;
  if (row.state !== 'asks') return STATE[row.state];
  return html`<ul class="small bare">${row.needs.map(need => html`<li>${need.words}</li>`)}</ul><label class="small"><input type="checkbox" data-sure=${row.line} .checked=${live(data.sure.has(row.line))}
    @change=${event => { data.sure[event.target.checked ? 'add' : 'delete'](row.line); redraw(); }}> Yes, take line ${row.line}</label>`;
}

const taskName = (camp, id) => camp.forecast?.tasks.find(task => task.id === id)?.name ?? id;

async function take(camp, data, chosen, redraw) {
  if (chosen.length === 0) {
    data.faults = ['No row is chosen. Confirm the rows that ask, or paste others.'];
    redraw();
    document.getElementById('import-faults').focus();
    return;
  }
  await trying(data, redraw, async () => {
    const rows = chosen.map(row => ({ ...row.reading, confirmed: row.needs.map(need => need.check) }));
    data.taken = (await ask('POST', `/api/campaigns/${encodeURIComponent(camp.id)}/entries/import`, { body: { rows } })).body;
    say(`${plural(data.taken.kept, 'reading')} kept.`);
  });
}
