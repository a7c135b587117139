// Which figures, from where, how well known, and what was changed.
import { html, nothing } from '../lib/vendor.js';
import { get } from '../lib/api.js';
import { latest } from '../lib/runs.js';
import { figureFrame } from '../elements/figure-frame.js';
import '../elements/sense-bars.js';
import { editLink, kindPanel } from '../elements/manage.js';
import { missing } from '../elements/missing.js';
import { originMark } from '../elements/marks.js';
import { figureOf, rowAt, writtenAt } from '../lib/inputs.js';
import { restsOn } from '../elements/rests-on.js';
import { kinds } from '../forms/kinds.js';
import { subnav } from '../elements/subnav.js';
import { link } from '../lib/route.js';
import { faultLine } from '../lib/faulty.js';
import { assumed, plural, sentence } from '../lib/words.js';
import { day, msv, msvTyped, plain } from '../lib/units.js';

const FIRST = 20;
let all = false;

export const title = ({ camp }) => `Basis of ${camp.doc.settings.name}`;

export async function load({ camp }) {
  const [changed, rests, run] = await Promise.all([get(`/api/campaigns/${camp.id}/changes?limit=30`).catch(() => ({ body: { items: [], total: 0 } })), get(`/api/campaigns/${camp.id}/inputs`), latest(camp.id)]);
  return { changed: changed.body, rests: rests.body, run };
}

export function drawn({ main }) {
  main.querySelector('#rests')?.scrollIntoView({ block: 'start' });
}

export function body({ route, camp, tables, data, redraw }) {
  const rows = data.rests.inputs.filter(row => row.status);
  const guessed = rows.filter(row => assumed(row.status)).length;
  const sought = route.search.getAll('input');
  const { settings } = camp.doc;
  const rules = tables.rule_sets.find(set => set.code === settings.rule_set);
  return html`
    <div class="lead"><div><h1>${rows.length === 0 ? 'What the forecast rests on' : `${guessed} of ${plural(rows.length, 'input')} with a source are assumptions`}</h1>
      <p class="under">An assumption is from memory, judgement or invention: it needs data from the site.</p></div>
      <div class="doing"><a class="button" href=${link(camp.id, 'settings')}>Edit the settings</a><a class="button" href="/api/campaigns/${camp.id}/document" download="campaign.json">Download the document</a></div></div>
    ${subnav(camp, 'basis', 'basis')}
    <div class="grid">
      ${missing(camp)}
      ${sought.length > 0 ? restsOn(camp, data.rests, sought) : nothing}
      ${data.run ? sensitivity(data.run) : nothing}
      <section class="panel w6"><h2>Settings</h2><dl class="facts">
        <div><dt>First day</dt><dd>${day(settings.start)}</dd></div><div><dt>Dose limits</dt><dd>${rules?.name ?? settings.rule_set}</dd></div>
        <div><dt>Working days</dt><dd>${settings.calendar.working_days.map(word => sentence(word.toLowerCase().slice(0, 3))).join(', ')}</dd></div>
        <div><dt>Shifts a day</dt><dd>${settings.calendar.shifts_per_day}</dd></div><div><dt>Productive time of a shift</dt><dd>${plain(settings.calendar.productive_hours_per_shift)} h</dd></div>
        <div><dt>Days without work</dt><dd>${settings.calendar.holidays.length === 0 ? 'none' : settings.calendar.holidays.length}</dd></div></dl>
        ${settings.story ? html`<p class="small muted story">${settings.story}</p>` : nothing}</section>
      <section class="panel w6"><h2>Limits that bind</h2>${limits(rules)}</section>
      <section class="panel"><div class="head"><h2>Inputs with their sources</h2></div>${inputTable(camp, rows, sought, redraw)}</section>
      ${kindPanel(camp, 'routines', {
    empty: 'No routines yet. A routine lists the tasks that a cut brings.', head: ['Routine', 'Its tasks arise', '~Technique', '~Tasks'],
    row: routine => [editLink(camp, 'routines', routine, routine.name), { component: 'for each component', before: 'once before', after: 'once after', weekly: 'every week' }[routine.applies], routine.technique ?? '', routine.tasks.map(task => task.name).join(', ')],
  })}
      ${kindPanel(camp, 'factors', {
    empty: 'No difficulty factors yet.', head: ['Factor', '~Percentage of', '#Extra time: low, likely, high', 'Known'],
    row: factor => [editLink(camp, 'factors', factor, factor.name), `${factor.stage} duration`, `${plain(factor.percent.low)}, ${plain(factor.percent.likely)}, ${plain(factor.percent.high)} %`, originMark(factor.origin)],
  })}
      ${kindPanel(camp, 'prices', {
    empty: 'No prices yet.', head: ['Price', 'Of', '#Amount', '~Known'],
    row: price => [editLink(camp, 'prices', price, price.name), `${price.what.replace(/-/g, ' ')}${price.of ? `, ${price.of}` : ''}`, `${plain(price.amount)} ${price.currency} of ${price.price_year}`, originMark(price.origin)],
  })}
      <section class="panel w6"><h2>Everything the plan is made of</h2>${objects(camp)}</section>
      <section class="panel w6"><h2>To repeat it</h2>${repeatable(camp)}</section>
      <section class="panel"><div class="head"><h2>Changes, the newest first</h2><a href=${link(camp.id, 'trail')}>Who changed what</a></div>${changes(data.changed)}</section>
    </div>`;
}

const WIDEST = 12;

/** How far the mean outcome moves from the lowest to the highest tenth of each input that acts in more than one place. */
function sensitivity({ outlook, run }) {
  const rows = outlook.sensitivity.slice(0, WIDEST);
  const faults = faultLine(outlook.faults);
  const failing = faults ? html`<p class="small" id="fault-line">${faults}</p>` : nothing;
  if (rows.length === 0) return faults ? html`<section class="panel">${failing}</section>` : nothing;
  const target = outlook.targets.find(each => each.scope === 'campaign');
  const deciding = rows.filter(row => row.decides).length;
  const name = row => `${row.name}${row.assumption ? ' (spread assumed)' : ''}`;
  const title = `${sentence(rows[0].name)} moves the dose most: from ${msv(rows[0].low_usv)} to ${msv(rows[0].high_usv)} person-mSv`;
  const data = { rows: rows.map(row => ({ name: name(row), lowUsv: row.low_usv, highUsv: row.high_usv, decides: row.decides })), meanUsv: outlook.person_usv.mean, targetUsv: target?.person_usv, title,
    desc: `Mean collective dose with each input in its lowest and its highest tenth, the widest first: ${rows.map(row => `${row.name} ${msv(row.low_usv)} to ${msv(row.high_usv)}`).join('; ')} person-mSv.` };
  return html`<section class="panel">${figureFrame({ title, picture: html`<p class="small muted">Mean collective dose in person-mSv, with each input in its lowest tenth (hollow) and in its highest (filled)${target ? '; dashed: the target' : ''}</p><sense-bars .data=${data}></sense-bars>`,
    under: html`<p class="small muted">${deciding > 0 ? `◆ marks ${plural(deciding, 'input')} that alone ${deciding === 1 ? 'moves' : 'move'} the mean across the target. ` : ''}Run ${run.number}, ${plain(outlook.trials)} draws.</p>`,
    caption: 'How far each input moves the collective dose, person-mSv', head: ['Input', 'lowest tenth', 'highest tenth', 'rank correlation', '± standard error', 'moves across the target'],
    rows: rows.map(row => [name(row), msv(row.low_usv), msv(row.high_usv), plain(Number(row.rank_correlation.toFixed(3))), plain(Number(row.error.toFixed(3))), row.decides ? 'yes' : 'no']) })}
    ${failing}<details class="fold"><summary>How the outcomes are drawn</summary><ul class="small">${outlook.notes.map(note => html`<li>${note}</li>`)}
      <li>A target asks for a decision from 5 of 20 outcomes above it, a person's constraint from 2 of 20 (house settings, no source).</li>
      <li>What moved the median is worked out by taking over one cause after the other in one fixed order: hours, dose rates, scope, technique, shielding, work done.</li></ul></details></section>`;
}

const limits = rules => (!rules ? html`<p>The rule set is not in the tables.</p>` : html`<div class="table" tabindex="0" role="region" aria-label="Limits"><table><thead><tr><th scope="col">Dose</th><th scope="col">over</th><th scope="col" class="n">mSv</th><th scope="col">Source</th></tr></thead>
  <tbody>${rules.rules.map(rule => html`<tr><th scope="row">${sentence(rule.quantity.replace(/-/g, ' '))}</th><td>${rule.period.replace(/-/g, ' ')}</td><td class="n">${msvTyped(rule.limit_usv)}</td><td>${source(rule)}</td></tr>`)}</tbody></table></div>
  <p class="small muted">Only effective dose is forecast here.</p>`);
const source = rule => (rule.origin ? html`${originMark(rule.origin)} ${rule.origin.text}` : html`${rule.source}`);

function inputTable(camp, rows, sought, redraw) {
  const shown = all ? rows : rows.filter((row, i) => i < FIRST || sought.includes(row.id));
  return html`<div class="table" tabindex="0" role="region" aria-label="Inputs"><table class="inputs"><thead><tr><th scope="col">Input</th><th scope="col">Figure</th><th scope="col">Known</th><th scope="col" class="mid-only">Source</th></tr></thead>
    <tbody>${shown.map(row => html`<tr class=${sought.includes(row.id) ? 'sought' : ''}><th scope="row"><a href=${writtenAt(camp, row)}>${row.name}</a><span class="sub">${kinds[row.kind]?.one ?? 'settings'}</span></th><td>${figureOf(row)}</td><td>${originMark(row)}</td><td class="mid-only">${row.source} ${row.rows.map(each => html`<a href=${rowAt(camp, each)}>${each.table}, ${each.row}<span class="spoken"> behind ${row.name}</span></a> `)}</td></tr>`)}</tbody></table></div>
    ${rows.length > FIRST ? html`<p class="pager"><button class="button little" @click=${() => { all = !all; redraw(); }}>${all ? `Show the first ${FIRST}` : `Show all ${rows.length}`}</button></p>` : nothing}`;
}

const objects = camp => html`<div class="table" tabindex="0" role="region" aria-label="Objects"><table><thead><tr><th scope="col">Kind</th><th scope="col" class="n">entries</th><th scope="col">on the page</th></tr></thead>
  <tbody>${Object.entries(kinds).map(([name, kind]) => html`<tr><th scope="row">${kind.title}</th><td class="n">${camp.doc[name].length}</td><td><a href=${link(camp.id, kind.tab)}>${sentence(kind.tab)}<span class="spoken">, for ${kind.title.toLowerCase()}</span></a></td></tr>`)}</tbody></table></div>`;

const repeatable = camp => html`${camp.forecast ? html`<p>${camp.forecast.method}</p><dl class="facts"><div><dt>Digest of the inputs (SHA-256)</dt><dd><code>${camp.forecast.inputs}</code></dd></div>
  ${camp.forecast.editions.map(each => html`<div><dt>Table ${each.table}</dt><dd>edition ${each.edition}</dd></div>`)}</dl>
  <ul class="small">${camp.forecast.cautions.map(caution => html`<li>${caution}</li>`)}</ul>` : html`<p>No forecast yet.</p>`}
  <p class="small"><a href="/api.html">How to ask for the same through the API</a></p>`;

const changes = ({ items, total }) => (items.length === 0 ? html`<p class="muted">None yet.</p>` : html`<div class="table" tabindex="0" role="region" aria-label="Changes"><table><thead><tr><th scope="col" class="n">Version</th><th scope="col">When</th><th scope="col">What</th></tr></thead>
  <tbody>${items.map(item => html`<tr><td class="n">${item.version}</td><td class="nowrap">${day(item.at.slice(0, 10))} ${item.at.slice(11, 16)} UTC</td><td>${item.kind === 'settings' ? 'settings' : `${kinds[item.kind]?.one ?? item.kind} ${item.code}`} ${item.what}</td></tr>`)}</tbody></table></div>
  ${total > items.length ? html`<p class="small muted">The newest ${items.length} of ${total}.</p>` : nothing}`);
