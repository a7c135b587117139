// Who works where for how long: every task, opening to its steps and lines.
import { html, nothing, repeat } from '../lib/vendor.js';
import { doseStrip } from '../elements/dose-strip.js';
import { editLink, kindPanel } from '../elements/manage.js';
import { missing } from '../elements/missing.js';
import { subnav } from '../elements/subnav.js';
import { taskWorking } from '../elements/task-working.js';
import { whenBar, whenHead } from '../elements/when-bar.js';
import { traceOf } from '../lib/inputs.js';
import { firstState, ordered, picked } from '../lib/tasklist.js';
import { figureWord, nameOf, plural } from '../lib/words.js';
import { day, dayShort, decimalsFor, duration, fixed, msv, msvFixed, plain, sig, stay, toMsv } from '../lib/units.js';
import { link } from '../lib/route.js';

const PAGE = 150;
const states = new Map();

export const title = ({ camp }) => `Tasks of ${camp.doc.settings.name}`;

export function body({ route, camp, redraw }) {
  const key = `${camp.id}?${route.search}`;
  if (!states.has(key)) states.set(key, firstState(route.search));
  const state = states.get(key);
  const change = values => { Object.assign(state, { from: 0 }, values); redraw(); };
  return html`
    <div class="lead"><div><h1>${heading(camp)}</h1>${camp.forecast ? html`<p class="under">Open a task to see how its hours and its dose come about. ${critical(camp.forecast)}</p>` : nothing}</div></div>
    ${subnav(camp, 'tasks', 'tasks')}
    <div class="stack">
      ${missing(camp)}
      <div class="grid"><div class="w4">${byHand(camp)}</div><div class="w4">${replaced(camp)}</div><div class="w4">${resources(camp)}</div></div>
      ${camp.forecast ? html`<section class="panel" aria-label="Tasks">${filters(camp, state, change)}${table(camp, state, change)}</section>` : nothing}
    </div>`;
}

const byHand = camp => kindPanel(camp, 'tasks', {
  folded: true, empty: 'No task is added by hand: all come from routines.', head: ['Task', 'Group', '~Waits for', '~Not before', '~#Steps'],
  row: task => [editLink(camp, 'tasks', task, task.name), task.group, task.after.join(', ') || 'nothing', task.not_before ? day(task.not_before) : 'any day', task.steps.length],
});

const replaced = camp => kindPanel(camp, 'overrides', {
  folded: true, empty: 'No derived figure is replaced. Open a task to replace one.', head: ['Figure', 'Task and step', '~Whose', '#New value', '~Why', '~Decided'],
  row: each => [editLink(camp, 'overrides', each, figureWord(each.figure)), `${each.task}, ${each.step}`, each.role ?? '', plain(each.value), each.reason, day(each.decided_on)],
});

const resources = camp => kindPanel(camp, 'resources', {
  folded: true, empty: 'No resource is limited.', head: ['Resource', '#Capacity', 'Counts'],
  row: each => [editLink(camp, 'resources', each, each.name), each.capacity, each.role ?? 'things'],
});

const heading = ({ forecast }) => (forecast ? `${plural(forecast.totals.tasks, 'task')}, ${fixed(forecast.totals.person_hours, 0)} person-hours, ${msv(forecast.totals.person_usv)} person-mSv` : 'Tasks');
const critical = forecast => {
  const count = forecast.tasks.filter(task => task.critical).length;
  return `${count === 1 ? '1 task is' : `${count} tasks are`} critical: a delay there delays the end.`;
};

function filters(camp, state, change) {
  const groups = camp.forecast.groups.map(group => group.group);
  return html`<form class="tools" @submit=${event => event.preventDefault()}>
    <div class="field"><label for="find-text">Find</label><div class="entry"><input id="find-text" type="search" .value=${state.text} @input=${event => change({ text: event.target.value })}></div></div>
    <div class="field"><label for="find-group">Group</label><div class="entry"><select id="find-group" @change=${event => change({ group: event.target.value })}>
      <option value="" ?selected=${state.group === ''}>all groups</option>${groups.map(group => html`<option ?selected=${state.group === group}>${group}</option>`)}</select></div></div>
    <div class="field"><label for="find-component">Component</label><div class="entry"><select id="find-component" @change=${event => change({ component: event.target.value })}>
      <option value="" ?selected=${state.component === ''}>all components</option>${camp.doc.components.map(each => html`<option value=${each.code} ?selected=${state.component === each.code}>${each.name}</option>`)}</select></div></div>
  </form>`;
}

const COLUMNS = [['name', 'Task', ''], ['start', 'When', 'wide-only when-cell'], ['hours', 'Hours', 'n mid-only'], ['people', 'Person-hours', 'n wide-only'], ['dose', 'Person-mSv', 'n'],
  [null, 'Dose as a strip', 'mid-only'], ['highest', 'Highest person, mSv', 'n wide-only'], ['stay', 'Stay time', 'n wide-only'], ['float', 'Float', 'n wide-only']];

function table(camp, state, change) {
  const { forecast } = camp;
  const found = ordered(picked(forecast.tasks, state, camp), state);
  const page = found.slice(state.from, state.from + PAGE);
  const scale = { decimals: Math.max(2, decimalsFor(forecast.tasks.map(task => toMsv(task.person_usv)))), top: Math.max(0, ...forecast.tasks.map(task => task.person_usv)), columns: COLUMNS.length };
  const sum = found.reduce((usv, task) => usv + task.person_usv, 0);
  return html`<p class="small muted" role="status">${found.length === forecast.tasks.length ? `All ${plural(found.length, 'task')}` : `${found.length} of ${plural(forecast.tasks.length, 'task')}, ${msv(sum)} person-mSv`}</p>
    <div class="table" tabindex="0" role="region" aria-label="Task table"><table class="tasks">
      <thead><tr>${COLUMNS.map(([by, words, set]) => head(by, words, set, state, change, forecast))}</tr></thead>
      <tbody>${repeat(page, task => task.id, task => row(camp, task, state, change, scale))}</tbody></table></div>
    ${found.length > PAGE ? html`<div class="pager"><button class="button little" ?hidden=${state.from === 0} @click=${() => change({ from: Math.max(0, state.from - PAGE) })}>Previous ${PAGE}</button>
      <span>${state.from + 1} to ${Math.min(found.length, state.from + PAGE)} of ${found.length}</span>
      <button class="button little" ?hidden=${state.from + PAGE >= found.length} @click=${() => change({ from: state.from + PAGE })}>Next ${PAGE}</button></div>` : nothing}`;
}

function head(by, words, set, state, change, forecast) {
  if (!by) return html`<th scope="col" class=${set}><span class="spoken">${words}</span></th>`;
  const now = state.by === by ? (state.down ? 'descending' : 'ascending') : nothing;
  const turn = () => change(state.by === by ? { down: !state.down } : { by, down: !['name', 'start', 'stay'].includes(by) });
  return html`<th scope="col" class=${set} aria-sort=${now}><button class="sorter" type="button" @click=${turn}>${words}</button>${by === 'start' ? whenHead(forecast) : nothing}</th>`;
}

function row(camp, task, state, change, { decimals, top, columns }) {
  const open = state.open.has(task.id);
  const turn = () => {
    if (open) state.open.delete(task.id);
    else state.open.add(task.id);
    change({ from: state.from });
  };
  return html`<tr class=${open ? 'opened' : ''}>
      <th scope="row"><button class="opener" type="button" aria-expanded=${open} @click=${turn}><span>${task.name}</span></button>
        <span class="sub">${task.component ? nameOf(camp, 'components', task.component) : task.group}<span class="narrow-only">, ${dayShort(task.start)} to ${dayShort(task.finish)}</span></span></th>
      <td class="wide-only when-cell">${whenBar(camp.forecast, task)}<span class="sub nowrap">${dayShort(task.start)} to ${day(task.finish)}</span></td>
      <td class="n mid-only">${sig(task.hours)}</td><td class="n wide-only">${sig(task.person_hours)}</td><td class="n">${msvFixed(task.person_usv, decimals)}</td>
      <td class="strip-cell mid-only">${doseStrip({ value: task.person_usv, top })}</td>
      <td class="n wide-only">${task.highest ? html`<a href=${link(camp.id, 'people', task.highest.worker)}>${task.highest.worker}</a> ${msvFixed(task.highest.usv, 3)}` : 'none'}</td>
      <td class="n wide-only">${task.stay ? stay(task.stay.hours) : 'no limit'}</td><td class="n wide-only">${task.critical ? 'critical' : duration(task.float_hours)}</td></tr>
    ${open ? html`<tr class="inside"><td colspan=${columns}>${taskWorking(camp, task, traceOf(camp, task, () => change({ from: state.from })))}</td></tr>` : nothing}`;
}
