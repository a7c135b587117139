// Will we stay inside target and constraint, and what must be decided today?
import { html, nothing } from '../lib/vendor.js';
import { figureFrame } from '../elements/figure-frame.js';
import { findings } from '../elements/findings.js';
import { missing } from '../elements/missing.js';
import { areaSketch } from '../elements/area-sketch.js';
import { doseStrip, stripKey } from '../elements/dose-strip.js';
import { cumulate, firstAbove } from '../lib/cumulate.js';
import { verdict } from '../lib/verdict.js';
import { get } from '../lib/api.js';
import { eightInTen } from '../lib/dots.js';
import * as runs from '../lib/runs.js';
import { nearestBounds, seesOutcomes } from '../lib/nearness.js';
import { changedSince, runLine } from '../elements/run-line.js';
import { tickKey, tickStrip } from '../elements/tick-strip.js';
import { weekEnds } from '../elements/fan-dots.js';
import '../elements/change-fall.js';
import { byNearness } from '../lib/nearness.js';
import { link, withQuery } from '../lib/route.js';
import { plural } from '../lib/words.js';
import { day, decimalsFor, fixed, msv, msvFixed, msvTyped, rate, sig, toMsv } from '../lib/units.js';
import '../elements/dose-curve.js';

const FIRST = 5;
let grouped = false;
let mode = 'date';
let nine = false;

export const title = ({ camp }) => `Standing of ${camp.doc.settings.name}`;

export async function load({ camp }) {
  if (!camp.forecast || camp.forecast.tasks.length === 0) return null;
  const [stand, run, last] = await Promise.all([get(`/api/campaigns/${encodeURIComponent(camp.id)}/standing`), runs.latest(camp.id), runs.list(camp.id, 1)]);
  const going = runs.going(last[0]) ? last[0].number : null;
  return { stand: stand.body, run: run ? { ...run, going } : { going } };
}

export function body({ camp, data, redraw, reload }) {
  const { forecast } = camp;
  if (!forecast || forecast.tasks.length === 0) {
    return html`<div class="lead"><div><h1>${forecast ? verdict(forecast) : 'Not forecast yet'}</h1>
      <p class="under">${forecast ? 'Tasks come from components, their cuts and the routines of the crew.' : 'The plan is kept as it is. A forecast needs a little more.'}</p></div></div>
      <div class="stack narrow">${missing(camp)}${checklist(camp)}</div>`;
  }
  const { stand, run } = data;
  const { outlook } = run;
  const calls = { changes: redraw, done: reload };
  if (outlook && stand.since && !data.moved && !data.moving) {
    data.moving = true;
    get(`/api/campaigns/${encodeURIComponent(camp.id)}/runs/${run.run.number}/moved?since=${stand.since}`).then(answer => { data.moved = answer.body; redraw(); }, () => {});
  }
  return html`
    <div class="lead"><div><h1>${outlook ? stand.heading : verdict(forecast)}</h1><p class="under">${outlook ? stand.under : `${day(forecast.start)} to ${day(forecast.finish)}: ${plural(forecast.totals.tasks, 'task')} on ${plural(forecast.totals.working_days, 'working day')}.`}</p>${runLine(camp, run, calls)}</div>
      <div class="doing">${forecast.targets.some(target => target.scope === 'campaign') ? nothing : html`<a class="button" href=${withQuery(link(camp.id, 'add', 'targets'), { scope: 'campaign' })}>Set a target</a>`}
        ${outlook ? html`<a class="button" href=${link(camp.id, 'sheet', `${run.run.number}`)}>Print sheet</a>` : nothing}<a class="button" href=${link(camp.id, 'reviews')}>Reviews</a><a class="button" href=${link(camp.id, 'decide')}>Record a decision</a></div></div>
    ${changedSince(camp, run)}
    <div class="grid even">
      <section class="panel w8">${outlook ? fan(camp, stand, run, redraw) : curve(forecast, redraw, false)}</section>
      <section class="panel w4"><div class="head"><h2>Needs a decision</h2><span class="count ${stand.decide.length ? '' : 'none'}">${stand.decide.length}</span></div>
        ${stand.decide.length === 0 ? html`<p>Nothing needs a decision.</p>` : html`${findings(stand.decide.slice(0, FIRST), camp)}${stand.decide.length > FIRST ? html`<details class="fold"><summary>${plural(stand.decide.length - FIRST, 'more decision')}</summary>${findings(stand.decide.slice(FIRST), camp)}</details>` : nothing}`}${others(camp)}</section>
      <div class="stack w7"><section class="panel">${areaSketch(camp, { title: hottest(forecast), level: 2, id: 'standing-sketch' })}${areaRanks(camp)}</section>
        <section class="panel">${groupTable(forecast)}</section></div>
      <div class="stack w5">${moved(data.moved)}<section class="panel">${outlook && seesOutcomes(outlook) ? peopleOutcomes(camp, outlook) : people(camp)}</section>
        <section class="panel cautions"><h2>Before you rely on it</h2><ul>${forecast.cautions.map(caution => html`<li>${caution}</li>`)}</ul>
          <p class="small muted">${forecast.method} <a href=${link(camp.id, 'basis')}>All inputs are in Basis.</a></p></section></div>
    </div>`;
}

const MODES = [['date', 'by date'], ['week', 'per week'], ['plan', 'plan, day by day']];

/** The fan from the run, the received dose from the log, on one axis. */
function fan(camp, stand, run, redraw) {
  const { outlook } = run;
  if (mode === 'plan') return curve(camp.forecast, redraw);
  const target = outlook.targets.find(each => each.scope === 'campaign');
  const weekly = mode === 'week';
  const last = outlook.finish.outcomes[19];
  const drawn = outlook.weeks.filter((week, i) => i === 0 || week.starts <= last);
  const ends = weekEnds(drawn, last);
  const weeks = drawn.map(week => ({ starts: week.starts, spread: weekly ? week.usv : week.cumulative }));
  const received = weekly ? stand.received.weeks : stand.received.days;
  const [low, high] = eightInTen(outlook.person_usv);
  const heading = weekly ? 'Collective dose per week' : `8 in 10 outcomes end between ${msv(low)} and ${msv(high)} person-mSv`;
  const desc = `${weekly ? 'Dose of each week' : 'Cumulative collective dose'} as bands of 5 in 10, 8 in 10 and 19 in 20 outcomes from ${day(outlook.as_of ?? outlook.start)}${weekly ? '' : `, ending in twenty dots between ${msv(outlook.person_usv.outcomes[0])} and ${msv(outlook.person_usv.outcomes[19])} person-mSv`}${target && !weekly ? `; ${20 - target.kept.of20} of 20 end above the target of ${msvTyped(target.person_usv)}` : ''}.`;
  const picture = { weeks, ends, spread: outlook.person_usv, targetUsv: target?.person_usv, received, plan: cumulate(camp.forecast.tasks), asOf: outlook.as_of, start: outlook.start,
    runs: nine && !weekly ? outlook.runs.map(each => each.cumulative_usv.slice(0, drawn.length)) : null, weekly, title: heading, desc };
  return figureFrame({
    title: heading, tools: modes(redraw), picture: html`<p class="small muted">${weekly ? 'person-mSv in each week' : 'Cumulative person-mSv, landing in 20 equally likely outcomes'}</p><fan-dots .data=${picture}></fan-dots>`,
    under: fanKey(target, weekly, Boolean(outlook.as_of)), caption: weekly ? 'Dose of each week, person-mSv' : 'Cumulative dose at the end of each week, person-mSv', head: ['Week to', '19 in 20 from', '8 in 10 from', 'to', '19 in 20 to'],
    rows: [...weeks.map((week, i) => [day(ends[i]), ...[0, 2, 17, 19].map(k => msv(week.spread.outcomes[k]))]),
      ...(weekly ? [] : outlook.person_usv.outcomes.map((usv, i) => [`Outcome ${i + 1} of 20`, '', '', '', msv(usv)]))],
  });
}

const fanKey = (target, weekly, begun) => html`<p class="fan-key" aria-hidden="true"><span><svg><rect class="fan f5" width="22" height="12"></rect></svg>5 in 10</span>
  <span><svg><rect class="fan f8" x="0.5" y="0.5" width="21" height="11"></rect></svg>8 in 10</span><span><svg><rect class="fan f19" width="22" height="12"></rect></svg>19 in 20 outcomes</span>
  ${weekly ? nothing : html`<span><svg><circle class="outcome" cx="11" cy="6" r="4.5"></circle></svg>one of 20 outcomes</span>${target ? html`<span><svg><path class="outcome above" d="M11 1l5 5l-5 5l-5-5z"></path></svg>above the target</span>` : nothing}`}
  ${begun ? html`<span><svg><line class="fact-line" x2="22" y1="6" y2="6"></line></svg>received</span>${weekly ? nothing : html`<span><svg><line class="plan-line" x2="22" y1="6" y2="6"></line></svg>plan</span>`}` : nothing}</p>`;

function moved(fall) {
  if (!fall) return nothing;
  const change = fall.to_usv - fall.from_usv;
  const from = `run ${fall.from}`;
  const title = `The median ${Math.abs(change) < 1 ? 'has not moved' : `${change > 0 ? 'rose' : 'fell'} by ${msv(Math.abs(change))} person-mSv`} since ${from}`;
  const data = { fromUsv: fall.from_usv, toUsv: fall.to_usv, from, to: `run ${fall.to}`, steps: fall.steps, title, desc: `${fall.steps.map(step => `${step.name} ${msv(step.usv)}`).join(', ')} person-mSv.` };
  return html`<section class="panel">${figureFrame({ title, picture: html`<change-fall .data=${data}></change-fall>`, under: html`<p class="small muted">${fall.order}</p>`, caption: 'What moved the median, person-mSv', head: ['Cause', 'person-mSv'],
    rows: [[from, msv(fall.from_usv)], ...fall.steps.map(step => [step.name, msv(step.usv)]), [`run ${fall.to}`, msv(fall.to_usv)]] })}</section>`;
}

function peopleOutcomes(camp, outlook) {
  const rows = nearestBounds(outlook).slice(0, 8);
  const top = Math.max(...rows.map(row => Math.max(row.usv.outcomes[19], row.bound ?? 0)), 1);
  const heading = rows.length === 0 ? 'Nobody takes part yet' : rows[0].above > 0 ? `${rows[0].worker} ends above ${rows[0].constraint === 'person' ? 'the constraint' : rows[0].constraint} in ${rows[0].above} of 20` : 'Nobody ends above a constraint in any of 20';
  return html`<div class="head"><h2>${heading}</h2><a href=${link(camp.id, 'people')}>All people</a></div>
    <ul class="people-strips">${rows.map(row => html`<li>
      <span><a href=${link(camp.id, 'people', row.worker)}>${row.worker}</a> <span class="muted small">${camp.byCode.workers.get(row.worker)?.roles.join(', ')}</span></span>
      <span class="value">${row.bound ? `${row.above} of 20 above ${msvTyped(row.bound)} mSv` : `${msv(row.usv.p50)} mSv`}</span>
      ${tickStrip({ outcomes: row.usv.outcomes, received: row.received, bound: row.bound, top })}</li>`)}</ul>${tickKey('outcomes', 'bound', 'above')}`;
}

function curve(forecast, redraw, drawn = true) {
  const target = forecast.targets.find(each => each.scope === 'campaign');
  const points = cumulate(forecast.tasks);
  const total = points.at(-1).usv;
  const passed = target && firstAbove(points, target.target_usv);
  const groups = forecast.groups.map(group => [group.group, forecast.tasks.filter(task => task.group === group.group)]).sort((a, b) => sum(b[1]) - sum(a[1]));
  const half = points.find(point => point.usv >= total / 2);
  const heading = grouped && groups.length > 0 ? `Most dose: ${groups[0][0]}, ${msv(sum(groups[0][1]))} person-mSv` : passed ? `The target is passed on ${day(passed.on)}` : total > 0 ? `Half of the dose is taken by ${day(half.on)}` : 'No dose is forecast';
  const desc = grouped ? `Cumulative dose of each group by date; ${groups.map(([name, tasks]) => `${name} ${msv(sum(tasks))}`).join(', ')} person-mSv at the end.`
    : `Cumulative collective dose by date, from 0 on ${day(forecast.start)} to ${msv(total)} person-mSv on ${day(forecast.finish)}${target ? `; target ${msvTyped(target.target_usv)}` : ''}.`;
  const data = { tasks: forecast.tasks, start: forecast.start, finish: forecast.finish, targetUsv: target?.target_usv, groups: grouped ? groups : null, title: heading, desc };
  return figureFrame({
    title: heading, tools: modes(redraw, drawn), picture: html`<p class="small muted">Cumulative person-mSv; a task counts on the day it finishes</p><dose-curve .data=${data}></dose-curve>`,
    ...(grouped ? { caption: 'Collective dose of each group', head: ['Group', 'person-mSv', 'last day'], rows: groups.map(([name, tasks]) => [name, msv(sum(tasks)), day(cumulate(tasks).at(-1).on)]) }
      : { caption: 'Collective dose by the day a task finishes', head: ['Day', 'person-mSv', 'tasks finished'], rows: points.map(point => [day(point.on), msv(point.usv), `${point.finished}`]) }),
  });
}

const sum = tasks => tasks.reduce((usv, task) => usv + task.person_usv, 0);

/** Without a run there is only the plan. */
function modes(redraw, drawn = true) {
  const set = value => () => { mode = value; redraw(); };
  const shown = drawn ? mode : 'plan';
  return html`<fieldset class="choice"><legend class="spoken">Show the dose</legend>
    ${drawn ? MODES.map(([value, words]) => html`<label><input type="radio" name="curve-mode" .checked=${mode === value} @change=${set(value)}>${words}</label>`) : nothing}
    ${shown === 'date' ? html`<label><input type="checkbox" id="curve-nine" .checked=${nine} @change=${event => { nine = event.target.checked; redraw(); }}>9 runs</label>` : nothing}
    ${shown === 'plan' ? html`<label><input type="checkbox" id="curve-grouped" .checked=${grouped} @change=${event => { grouped = event.target.checked; redraw(); }}>by group</label>` : nothing}</fieldset>`;
}

function others(camp) {
  const checks = camp.forecast.findings.filter(found => found.weight === 'check');
  const notes = camp.forecast.findings.filter(found => found.weight === 'note');
  const fold = (words, list) => (list.length === 0 ? nothing : html`<details class="fold"><summary>${words}: ${list.length}</summary>${findings(list, camp)}</details>`);
  return html`${fold('To check', checks)}${fold('Good to know', notes)}`;
}

const hottest = ({ areas }) => {
  const total = areas.reduce((usv, area) => usv + area.person_usv, 0);
  const top = [...areas].sort((a, b) => b.person_usv - a.person_usv)[0];
  return top && total > 0 ? `${sig((100 * top.person_usv) / total, 2)} % of the dose is taken at: ${top.name}` : 'No dose is forecast in any area';
};

function areaRanks(camp) {
  const areas = [...camp.forecast.areas].sort((a, b) => b.person_usv - a.person_usv);
  const decimals = decimalsFor(areas.map(area => toMsv(area.person_usv)));
  const top = areas[0]?.person_usv ?? 0;
  return html`<div class="table" tabindex="0" role="region" aria-label="Dose by area"><table><thead><tr><th scope="col">Area</th><th scope="col" class="n">person-mSv</th>
    <th scope="col"><span class="spoken">Dose as a strip</span></th><th scope="col" class="n">hours there</th><th scope="col" class="n mid-only">highest µSv/h</th></tr></thead>
    <tbody>${areas.map(area => html`<tr><th scope="row"><a href=${link(camp.id, 'areas', area.area)}>${area.name}</a></th>
      <td class="n">${msvFixed(area.person_usv, decimals)}</td><td class="strip-cell">${doseStrip({ value: area.person_usv, top })}</td>
      <td class="n">${sig(area.person_hours)}</td><td class="n mid-only">${rate(area.highest_usv_per_h)}</td></tr>`)}</tbody></table></div>`;
}

function people(camp) {
  const nearest = byNearness(camp.forecast).slice(0, 8);
  const top = Math.max(...nearest.map(near => Math.max(near.usv, near.bound ?? 0)), 0);
  const decimals = Math.max(2, decimalsFor(nearest.map(near => toMsv(near.usv))));
  const over = nearest.filter(near => near.part > 1).length;
  const heading = nearest.length === 0 ? 'Nobody takes part yet' : over > 0 ? `${plural(over, 'person', 'people')} above what is allowed` : `Nearest to what is allowed: ${nearest[0].person.worker}`;
  return html`<div class="head"><h2>${heading}</h2><a href=${link(camp.id, 'people')}>All people</a></div>
    <ul class="people-strips">${nearest.map(near => html`<li>
      <span><a href=${link(camp.id, 'people', near.person.worker)}>${near.person.worker}</a> <span class="muted small">${near.person.roles.join(', ')}</span></span>
      <span class="value">${msvFixed(near.usv, decimals)}${near.bound ? ` of ${msvTyped(near.bound)}` : ''} mSv</span>
      ${doseStrip({ value: near.usv - near.before, before: near.before, bound: near.bound, top })}</li>`)}</ul>${stripKey('planned', 'bound', 'over')}`;
}

function groupTable({ groups, totals }) {
  const sorted = [...groups].sort((a, b) => b.person_usv - a.person_usv);
  const decimals = decimalsFor(sorted.map(group => toMsv(group.person_usv)));
  return html`<h2>Groups of tasks, by dose</h2><div class="table" tabindex="0" role="region" aria-label="Groups of tasks"><table><thead><tr><th scope="col">Group</th><th scope="col" class="n">person-mSv</th>
    <th scope="col" class="mid-only"><span class="spoken">Dose as a strip</span></th><th scope="col" class="n mid-only">tasks</th><th scope="col" class="n mid-only">hours</th><th scope="col" class="n">person-hours</th></tr></thead>
    <tbody>${sorted.map(group => html`<tr><th scope="row">${group.group}</th><td class="n">${msvFixed(group.person_usv, decimals)}</td>
      <td class="strip-cell mid-only">${doseStrip({ value: group.person_usv, top: sorted[0].person_usv })}</td>
      <td class="n mid-only">${group.tasks}</td><td class="n mid-only">${sig(group.hours)}</td><td class="n">${fixed(group.person_hours, 0)}</td></tr>`)}</tbody>
    <tfoot><tr><th scope="row">all</th><td class="n">${msvFixed(totals.person_usv, decimals)}</td><td class="mid-only"></td><td class="n mid-only">${totals.tasks}</td>
      <td class="n mid-only">${sig(totals.task_hours)}</td><td class="n">${fixed(totals.person_hours, 0)}</td></tr></tfoot></table></div>`;
}

function checklist(camp) {
  const steps = [['areas', 'Areas where people stand, with a survey each'], ['techniques', 'Techniques for the cuts'], ['workers', 'People and their roles'],
    ['routines', 'Routines: the tasks that a cut brings'], ['components', 'Components, with their cuts'], ['targets', 'A target for the collective dose']];
  return html`<section class="panel"><h2>What a plan is made of</h2><ul class="findings">${steps.map(([kind, words]) => html`<li><span></span>
    <div><p class="fact">${words}</p><p class="means">${plural(camp.doc[kind].length, 'entry', 'entries')}</p></div>
    <a class="button little" href=${link(camp.id, 'add', kind)}>Add<span class="spoken">: ${words}</span></a></li>`)}</ul></section>`;
}
