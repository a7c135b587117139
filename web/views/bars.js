// When the work happens: bars over time, what waits for which resource, how busy each resource is.
import { html, nothing, svg } from '../lib/vendor.js';
import { barRows, waiting } from '../lib/bars.js';
import { link, withQuery } from '../lib/route.js';
import { nameOf, plural } from '../lib/words.js';
import { day, dayNumber, dayShort, duration, percent, sig } from '../lib/units.js';
import { figureFrame } from '../elements/figure-frame.js';
import { addLink } from '../elements/manage.js';
import { missing } from '../elements/missing.js';
import { subnav } from '../elements/subnav.js';
import '../elements/resource-weeks.js';
import '../elements/work-bars.js';

const LONGEST = 12;
let by = 'component';

export const title = ({ camp }) => `Bars over time, ${camp.doc.settings.name}`;

export function body({ camp, redraw }) {
  const { forecast } = camp;
  return html`<div class="lead"><div><h1>${forecast && forecast.tasks.length > 0 ? `${day(forecast.start)} to ${day(forecast.finish)}` : 'Bars over time'}</h1>
      ${forecast ? html`<p class="under">${sentenceOf(camp)}</p>` : nothing}</div></div>
    ${subnav(camp, 'tasks', 'bars')}
    <div class="grid">${missing(camp)}
      ${forecast && forecast.tasks.length > 0 ? html`<section class="panel">${bars(camp, redraw)}</section><section class="panel w5">${waits(camp)}</section><section class="panel w7">${uses(camp)}</section>` : nothing}</div>`;
}

function sentenceOf({ forecast }) {
  const late = waiting(forecast.tasks);
  const hours = late.reduce((sum, task) => sum + task.wait_hours, 0);
  return late.length === 0 ? 'No task waits for a resource.' : `${late.length === 1 ? '1 task waits' : `${late.length} tasks wait`} for a resource, ${duration(hours)} of working time together.`;
}

function bars(camp, redraw) {
  const { forecast } = camp;
  const rows = barRows(forecast.tasks, by, key => (by === 'component' ? nameOf(camp, 'components', key) : key));
  const data = { rows, from: dayNumber(forecast.start), to: dayNumber(forecast.finish) + 1, title: 'Tasks over time', desc: `${plural(rows.length, 'row')} from ${day(forecast.start)} to ${day(forecast.finish)}, one for each ${by}. Thick bars are critical; a dashed frame marks a task that waited for a resource.` };
  const choice = (value, words) => html`<label><input type="radio" name="bars-by" value=${value} .checked=${by === value} @change=${() => { by = value; redraw(); }}>${words}</label>`;
  return html`${figureFrame({
    title: `Tasks by ${by}`, tools: html`<fieldset class="choice"><legend class="spoken">A row for each</legend>${choice('component', 'Component')}${choice('group', 'Group')}</fieldset>`,
    picture: html`<work-bars .data=${data}></work-bars>`, under: key, caption: `Tasks by ${by}`, head: [by === 'component' ? 'Component' : 'Group', 'tasks', 'critical', 'from', 'to', 'waits for resources'],
    rows: rows.map(row => [row.key === '' || by === 'group' ? html`<a href=${withQuery(link(camp.id, 'tasks'), by === 'group' ? { group: row.key } : {})}>${row.name}</a>` : html`<a href=${withQuery(link(camp.id, 'tasks'), { component: row.key })}>${row.name}</a>`,
      row.tasks.length, row.critical, dayShort(row.tasks[0].start), dayShort(row.tasks.reduce((last, task) => (task.finish > last ? task.finish : last), '')), row.waits.length === 0 ? 'none' : duration(row.waits.reduce((sum, task) => sum + task.wait_hours, 0))]),
  })}`;
}

const key = html`<p class="key" aria-hidden="true"><span>${svg`<svg class="bar-row"><rect class="bar-of critical" y="1" width="22" height="10"></rect></svg>`}critical</span>
  <span>${svg`<svg class="bar-row"><rect class="bar-of" y="3" width="22" height="6"></rect></svg>`}has float</span><span>${svg`<svg class="bar-row"><rect class="wait" x="1" y="1" width="20" height="10"></rect></svg>`}waited for a resource</span></p>`;

function waits(camp) {
  const late = waiting(camp.forecast.tasks);
  return html`<h2>What waits for which resource</h2>
    ${late.length === 0 ? html`<p class="muted">Nothing: capacities are enough, or no resource is limited.</p>` : html`<div class="table" tabindex="0" role="region" aria-label="Waiting tasks"><table><thead><tr><th scope="col">Task</th><th scope="col">waits for</th><th scope="col" class="n">working time</th></tr></thead>
      <tbody>${late.slice(0, LONGEST).map(task => html`<tr><th scope="row"><a href=${withQuery(link(camp.id, 'tasks'), { task: task.id })}>${task.name}</a><span class="sub">${task.component ? nameOf(camp, 'components', task.component) : task.group}, ${dayShort(task.start)}</span></th>
        <td>${nameOf(camp, 'resources', task.waits_for)}</td><td class="n">${duration(task.wait_hours)}</td></tr>`)}</tbody></table></div>
      ${late.length > LONGEST ? html`<p class="small muted">The ${LONGEST} longest of ${late.length} waits.</p>` : nothing}`}`;
}

function uses(camp) {
  const all = camp.forecast.utilisation ?? [];
  if (all.length === 0) return html`<h2>No resource is limited</h2><p class="muted">A resource is a crane, a place on the bridge, or the people of a role. With a capacity, tasks wait for it.</p>${addLink(camp, 'resources')}`;
  return html`<div class="stack">${all.map(use => figureFrame({
    title: `${use.name}: ${percent(Number(use.share.toPrecision(2)))} of its hours taken`, picture: html`<resource-weeks .data=${{ code: use.resource, weeks: use.weeks, title: `${use.name} by week`, desc: `${sig(use.busy_hours)} of ${sig(use.capacity_hours)} hours over ${plural(use.weeks.length, 'week')}.` }}></resource-weeks>`,
    caption: `${use.name}, hours by week`, head: ['Week of', 'taken, h', 'there are, h'], rows: use.weeks.map(week => [day(week.monday), sig(week.busy_hours), sig(week.capacity_hours)]),
  }))}</div>`;
}
