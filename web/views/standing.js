// Will we stay inside target and constraint, and what must be decided today?
import { html, nothing } from '../lib/vendor.js';
import { figureFrame } from '../elements/figure-frame.js';
import { findings } from '../elements/findings.js';
import { missing } from '../elements/missing.js';
import { areaSketch } from '../elements/area-sketch.js';
import { doseStrip, stripKey } from '../elements/dose-strip.js';
import { cumulate, firstAbove } from '../lib/cumulate.js';
import { verdict } from '../lib/verdict.js';
import { byNearness } from '../lib/nearness.js';
import { link, withQuery } from '../lib/route.js';
import { plural } from '../lib/words.js';
import { day, decimalsFor, fixed, msv, msvFixed, msvTyped, rate, sig, toMsv } from '../lib/units.js';
import '../elements/dose-curve.js';

let grouped = false;

export const title = ({ camp }) => `Standing of ${camp.doc.settings.name}`;

export function body({ camp, redraw }) {
  const { forecast } = camp;
  if (!forecast || forecast.tasks.length === 0) {
    return html`<div class="lead"><div><h1>${forecast ? verdict(forecast) : 'Not forecast yet'}</h1>
      <p class="under">${forecast ? 'Tasks come from components, their cuts and the routines of the crew.' : 'The plan is kept as it is. A forecast needs a little more.'}</p></div></div>
      <div class="stack narrow">${missing(camp)}${checklist(camp)}</div>`;
  }
  const decide = forecast.findings.filter(found => found.weight === 'decide');
  return html`
    <div class="lead"><div><h1>${verdict(forecast)}</h1><p class="under">${under(forecast)}</p></div>
      ${forecast.targets.some(target => target.scope === 'campaign') ? nothing : html`<div class="doing"><a class="button" href=${withQuery(link(camp.id, 'add', 'targets'), { scope: 'campaign' })}>Set a target</a></div>`}</div>
    <div class="grid even">
      <section class="panel w8">${curve(forecast, redraw)}</section>
      <section class="panel w4"><div class="head"><h2>Needs a decision</h2><span class="count ${decide.length ? '' : 'none'}">${decide.length}</span></div>
        ${decide.length === 0 ? html`<p>Nothing needs a decision.</p>` : findings(decide, camp)}${others(camp)}</section>
      <div class="stack w7"><section class="panel">${areaSketch(camp, { title: hottest(forecast), level: 2, id: 'standing-sketch' })}${areaRanks(camp)}</section>
        <section class="panel">${groupTable(forecast)}</section></div>
      <div class="stack w5"><section class="panel">${people(camp)}</section>
        <section class="panel cautions"><h2>Before you rely on it</h2><ul>${forecast.cautions.map(caution => html`<li>${caution}</li>`)}</ul>
          <p class="small muted">${forecast.method} <a href=${link(camp.id, 'basis')}>All inputs are in Basis.</a></p></section></div>
    </div>`;
}

const under = ({ start, finish, totals, people }) => {
  const top = [...people].sort((a, b) => b.usv - a.usv)[0];
  return `${day(start)} to ${day(finish)}: ${plural(totals.tasks, 'task')} on ${plural(totals.working_days, 'working day')}, ${sig(totals.field_hours)} person-hours in the areas`
    + `${top && top.usv > 0 ? `. The highest dose is ${msv(top.usv)} mSv, for ${top.worker}` : ''}.`;
};

function curve(forecast, redraw) {
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
    title: heading, tools: modes(redraw), picture: html`<p class="small muted">Cumulative person-mSv; a task counts on the day it finishes</p><dose-curve .data=${data}></dose-curve>`,
    ...(grouped ? { caption: 'Collective dose of each group', head: ['Group', 'person-mSv', 'last day'], rows: groups.map(([name, tasks]) => [name, msv(sum(tasks)), day(cumulate(tasks).at(-1).on)]) }
      : { caption: 'Collective dose by the day a task finishes', head: ['Day', 'person-mSv', 'tasks finished'], rows: points.map(point => [day(point.on), msv(point.usv), `${point.finished}`]) }),
  });
}

const sum = tasks => tasks.reduce((usv, task) => usv + task.person_usv, 0);

function modes(redraw) {
  const set = value => () => { grouped = value; redraw(); };
  return html`<fieldset class="choice"><legend class="spoken">Show the dose</legend>
    <label><input type="radio" name="curve-mode" .checked=${!grouped} @change=${set(false)}>all together</label>
    <label><input type="radio" name="curve-mode" .checked=${grouped} @change=${set(true)}>by group</label></fieldset>`;
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
