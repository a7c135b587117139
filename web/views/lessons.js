// Are our estimates good, and is the work changing?
import { html, nothing } from '../lib/vendor.js';
import { get } from '../lib/api.js';
import '../elements/line-picture.js';
import '../elements/ratio-rows.js';
import { acceptFactor } from '../elements/accept-factor.js';
import { bringFactor } from '../elements/bring-factor.js';
import { figureFrame } from '../elements/figure-frame.js';
import { finding } from '../elements/findings.js';
import { link } from '../lib/route.js';
import { nameOf, plural, sentence } from '../lib/words.js';
import { day, dayShort, msv, sig } from '../lib/units.js';

const KIND = { hours: 'Hours', rate: 'Dose rate', speed: 'Tool-on time' };

export const title = ({ camp }) => `Lessons of ${camp.doc.settings.name}`;

export async function load({ camp }) {
  const at = `/api/campaigns/${encodeURIComponent(camp.id)}`;
  const [learning, learnt] = await Promise.all([get(`${at}/learning`), get(`${at}/learnt`)]);
  const charts = learning.body.drift;
  return { ...learning.body, accepted: learnt.body.items, chart: Math.max(0, charts.findIndex(chart => chart.alarm)) };
}

export function body(page) {
  const { camp, data } = page;
  if (data.entries === 0) return empty(page);
  const done = data.tasks.filter(task => task.dose_factor > 0 && task.hours_factor > 0);
  return html`
    <div class="lead"><div><h1>${heading(data)}</h1><p class="under">${under(data, done)}</p></div></div>
    <div class="grid">
      ${data.findings.length === 0 ? nothing : html`<section class="panel w12"><h2>What the log asks</h2>${asked(data.findings, camp)}</section>`}
      <section class="panel w12"><h2>What was learnt</h2>${factors(page)}</section>
      <section class="panel w6">${drift(page)}</section>
      <section class="panel w6"><h2>${earnedHeading(data)}</h2>${earned(data)}</section>
      ${done.length === 0 ? nothing : html`<section class="panel w6">${ratios(camp, done)}</section>`}
      ${data.calibration?.finished > 0 ? html`<section class="panel w6">${calibration(camp, data.calibration)}</section>` : nothing}
      ${accepted(page)}
      <section class="panel w12"><h2>How this is worked out</h2><ul>${data.notes.map(note => html`<li>${note}</li>`)}</ul></section>
    </div>`;
}

const empty = page => html`
  <div class="lead"><div><h1>Nothing to learn from yet</h1><p class="under">Lessons begin with the first entries of the log.</p></div></div>
  <div class="grid"><section class="panel empty"><h2>No entries yet</h2><p>Hours and dosimeter readings, task by task, show here beside what was forecast.</p>
    <a class="button" href=${link(page.camp.id, 'log')}>Write down the first entry</a></section>${accepted(page)}</div>`;

function heading({ split, drift }) {
  const alarms = drift.filter(chart => chart.alarm);
  const start = split ? `The work done took ${sig(split.dose_factor, 3)} times its estimated dose` : 'Nothing can be held against its estimate yet';
  return alarms.length === 0 ? start : `${start}, and ${plural(alarms.length, 'alarm')} ${alarms.length === 1 ? 'stands' : 'stand'}`;
}

function under(data, done) {
  const split = data.split ? ` ${sig(data.split.hours_factor, 3)} times the hours, ${sig(data.split.rate_factor, 3)} times the dose per hour.` : '';
  return `${plural(data.entries, 'entry', 'entries')} up to ${day(data.as_of)}${data.invented ? ', the day as which this invented campaign is shown' : ''}; ${plural(done.length, 'task')} finished.${split}`;
}

/** What is asked here is answered here: only what lies elsewhere has a way on. */
const asked = (list, camp) => html`<ul class="findings">${list.map(found => (found.about === 'lessons'
  ? html`<li><svg class="sign ${found.weight}" viewBox="0 0 14 14" aria-hidden="true"><path d="M7 1 13 7 7 13 1 7z"></path></svg><div><p class="fact">${found.fact}</p><p class="means">${found.means}</p></div></li>`
  : finding(found, camp)))}</ul>`;

/** "Cut, core barrel": many tasks are called the same. */
function taskName(camp, { task, name }) {
  const component = camp.forecast?.tasks.find(each => each.id === task)?.component;
  return component ? `${name}, ${nameOf(camp, 'components', component)}` : name;
}

const named = (camp, { kind, of }) => (kind === 'rate' ? nameOf(camp, 'areas', of) : kind === 'speed' ? nameOf(camp, 'techniques', of) : sentence(of));

function factors(page) {
  const { camp, data } = page;
  return html`<div class="table" tabindex="0" role="region" aria-label="Factors"><table><thead><tr><th scope="col">Factor</th><th scope="col" class="n">times</th><th scope="col" class="n">8 in 10</th>
    <th scope="col" class="n mid-only">from</th><th scope="col" class="n">in force</th><th scope="col"><span class="spoken">Accept</span></th></tr></thead>
    <tbody>${data.factors.map(each => html`<tr><th scope="row">${named(camp, each)}<span class="sub">${KIND[each.kind]}${each.since ? `, since ${day(each.since)}` : ''}</span></th>
      <td class="n">${sig(each.factor, 3)}</td><td class="n">${sig(each.low, 3)} to ${sig(each.high, 3)}</td>
      <td class="n mid-only">${plural(each.count, each.kind === 'rate' ? 'shift' : 'task')}</td><td class="n">${each.accepted ? sig(Math.exp(each.accepted.log_mean), 3) : '1'}</td>
      <td>${!each.proposed ? nothing : data.may_accept ? html`<button class="button little decide" @click=${() => accept(page, each)}>Accept<span class="spoken">: ${named(camp, each)}</span></button>` : 'proposed'}</td></tr>`)}</tbody></table></div>
    <p class="small muted">A factor is proposed when its 8-in-10 range leaves out what is in force. No forecast changes before the radiation protection officer accepts it and the campaign is run again.</p>`;
}

async function accept({ camp, reload }, each) {
  const done = await acceptFactor({
    camp, title: `Accept ${sig(each.factor, 3)} for ${named(camp, each)}?`, verb: 'Accept it',
    text: `${each.words} The next run takes it for the rest of the work. It is written down with your name and reason, and cannot be changed later, only withdrawn.`,
    body: { kind: each.kind, of: each.of, seen: { count: each.count, log_mean: each.log_mean } },
  });
  if (done) await reload();
}

function ratios(camp, done) {
  const sorted = [...done].sort((a, b) => b.dose_factor - a.dose_factor);
  const above = done.filter(task => task.dose_factor > 1).length;
  const words = `${above} of ${done.length} finished tasks took more dose than estimated`;
  const desc = 'One row for each finished task, the highest dose first. Dot: logged dose by estimate. Ring: logged hours by estimate. Dashed: as estimated.';
  return figureFrame({
    title: words, caption: 'logged by estimate', head: ['Task', 'hours', 'times', 'dose per hour, times', 'person-µSv', 'times'],
    picture: html`<ratio-rows .data=${{ title: words, desc, words: 'logged ÷ estimate', one: true, rows: sorted.map(task => ({ name: taskName(camp, task), dots: [{ x: task.hours_factor, hollow: true }, { x: task.dose_factor }] })) }}></ratio-rows>`,
    under: html`<p class="small muted">Dot: dose. Ring: hours. Both on an axis by factors; the dashed line is the estimate.</p>`,
    rows: sorted.map(task => [taskName(camp, task), sig(task.hours, 3), sig(task.hours_factor, 3), sig(task.rate_factor, 3), sig(task.usv, 3), sig(task.dose_factor, 3)]),
  });
}

function drift({ camp, data, redraw }) {
  const chart = data.drift[data.chart];
  if (!chart) return html`<h2>Is the work changing?</h2><p class="muted">Nothing to judge yet.</p>`;
  const what = `${KIND[chart.kind]}, ${named(camp, chart)}`;
  const line = field => chart.points.map((point, i) => ({ x: i + 1, y: point[field] }));
  return figureFrame({
    title: `${what}: ${chart.words}`, caption: `running sums, ${what}`, head: ['Day', 'times', 'sum above', 'sum below', 'mean that forgets, times', 'alarm'],
    tools: html`<label class="small">Show <select id="drift-chart" @change=${event => { data.chart = Number(event.target.value); redraw(); }}>
      ${data.drift.map((each, i) => html`<option value=${i} ?selected=${i === data.chart}>${KIND[each.kind]}, ${named(camp, each)}${each.alarm ? ': alarm' : ''}</option>`)}</select></label>`,
    picture: html`<line-picture .data=${{
      title: chart.words, desc: `Running sums of how far each ${chart.unit} lies above (line) and below (dashed) what is expected, in its usual spread. Past ${chart.decision} is an alarm.`,
      x: { words: `${chart.unit}s in their order` }, y: { words: 'running sum, in usual spreads', from: 0 },
      lines: [{ points: line('high') }, { points: line('low'), kind: 'below' }], dots: chart.points.map((point, i) => ({ x: i + 1, y: point.high, hollow: !point.high_alarm })),
      levels: [{ y: chart.decision, words: 'alarm' }],
    }}></line-picture>`,
    under: html`<p class="small muted">Line: above what is expected. Dashed: below. ${chart.changed_on ? `It lies clearly apart from ${day(chart.changed_on)} on.` : ''}</p>`,
    rows: chart.points.map(point => [`${dayShort(point.on)}${point.about ? ` ${point.about}` : ''}`, sig(point.ratio, 3), sig(point.high, 3), sig(point.low, 3), sig(Math.exp(point.ewma), 3), point.high_alarm ? 'above' : point.low_alarm ? 'below' : '']),
  });
}

function calibration(camp, found) {
  const words = `${found.inside} of ${found.finished} finished tasks fell inside their 8-in-10 range`;
  return figureFrame({
    title: `Did 8 in 10 land inside 8 in 10? ${words}`, caption: 'finished tasks and their ranges', head: ['Task', 'person-µSv', 'low', 'high', ''],
    picture: html`<ratio-rows .data=${{ title: words, desc: 'One row for each finished task: the line is the range in which 8 in 10 outcomes of the plan lie, the dot is the logged dose.', words: 'person-µSv', rows: found.rows.map(row => ({ name: taskName(camp, row), mark: row.inside ? '' : row.usv > row.high_usv ? 'above' : 'below', dots: row.usv > 0 ? [{ x: row.usv }] : [], low: row.low_usv, high: row.high_usv })) }}></ratio-rows>`,
    under: html`<p class="small">${found.words} Below: ${found.below}, above: ${found.above}.</p>`,
    rows: found.rows.map(row => [taskName(camp, row), sig(row.usv, 3), sig(row.low_usv, 3), sig(row.high_usv, 3), row.inside ? 'inside' : row.usv > row.high_usv ? 'above' : 'below']),
  });
}

const earnedHeading = ({ dose }) => (dose.at_completion ? `If it goes on so, ${msv(dose.at_completion)} person-mSv at the end; ${msv(dose.if_not_recurring)} if it does not` : 'Nothing is earned yet');

function earned({ dose, hours }) {
  const row = (words, read, field) => html`<tr><th scope="row">${words}</th><td class="n">${dose[field] === undefined ? 'not known' : read(dose[field])}</td><td class="n">${hours[field] === undefined ? 'not known' : sig(hours[field], 3)}</td></tr>`;
  const ratio = value => sig(value, 3);
  return html`<div class="table" tabindex="0" role="region" aria-label="Against the estimate"><table><thead><tr><th scope="col">Against the estimate</th><th scope="col" class="n">person-mSv</th><th scope="col" class="n">hours in areas</th></tr></thead><tbody>
    ${row('Estimate of the whole work', msv, 'budget')}${row('of this planned by now', msv, 'planned')}${row('of this done by now', msv, 'earned')}${row('logged', msv, 'actual')}
    ${row('done ÷ logged', ratio, 'index')}${row('done ÷ planned', ratio, 'plan_index')}${row('at the end, if it goes on so', msv, 'at_completion')}${row('at the end, if it does not recur', msv, 'if_not_recurring')}
    ${row('needed of the rest to meet the estimate', ratio, 'needed_index')}</tbody></table></div>
    <p class="small muted">Plain forms beside the outlook, without spread: the outlook counts every line and what was accepted.</p>`;
}

function accepted(page) {
  const { camp, data } = page;
  if (data.accepted.length === 0 && !data.may_accept) return nothing;
  return html`<section class="panel w12"><div class="head"><h2>Accepted factors</h2>${data.may_accept ? html`<button class="button" id="bring-factor" @click=${() => bring(page)}>Bring one from another campaign …</button>` : nothing}</div>
    ${data.accepted.length === 0 ? html`<p class="muted">None yet.</p>` : acceptedTable(page)}</section>`;
}

async function bring({ camp, reload }) {
  if (await bringFactor(camp)) await reload();
}

function acceptedTable(page) {
  const { camp, data } = page;
  return html`<div class="table" tabindex="0" role="region" aria-label="Accepted factors"><table><thead><tr><th scope="col">Factor</th><th scope="col" class="n">times</th>
    <th scope="col">Learnt</th><th scope="col">Reason</th><th scope="col"><span class="spoken">Withdraw</span></th></tr></thead>
    <tbody>${data.accepted.map(each => html`<tr><th scope="row">${named(camp, each)}<span class="sub">${KIND[each.kind]}${each.withdrawn ? ', withdrawn' : each.in_force ? '' : ', no longer in force'}</span></th><td class="n">${sig(each.factor, 3)}</td>
      <td>${each.withdrawn ? '' : each.from ? `in ${each.from.campaign}, ${plural(each.from.count, 'observation')}` : `here, ${plural(each.count, 'observation')} up to ${day(each.up_to)}`}</td><td>${each.reason}<span class="sub">${each.by}</span></td>
      <td>${each.in_force && !each.withdrawn && data.may_accept ? html`<button class="button little" @click=${() => withdraw(page, each)}>Withdraw<span class="spoken">: ${named(camp, each)}</span></button>` : nothing}</td></tr>`)}</tbody></table></div>`;
}

async function withdraw({ camp, reload }, each) {
  const done = await acceptFactor({
    camp, title: `Withdraw the factor for ${named(camp, each)}?`, verb: 'Withdraw it', text: 'The next run takes the plan as it is written. The factor stays on record.',
    body: { kind: each.kind, of: each.of, withdrawn: true },
  });
  if (done) await reload();
}
