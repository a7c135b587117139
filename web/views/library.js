// Routines ready to use: looked at here, copied into the campaign, changed there.
import { html, nothing } from '../lib/vendor.js';
import { get } from '../lib/api.js';
import { forget } from '../lib/campaign.js';
import { say } from '../lib/focus.js';
import { link } from '../lib/route.js';
import { three } from '../lib/speed.js';
import { driverWord, plural, sentence } from '../lib/words.js';
import { percent, plain } from '../lib/units.js';
import { copied, copying, firstCopy } from '../forms/copying.js';
import { announce, askForm } from '../forms/page.js';
import { Session } from '../forms/session.js';
import { originMark } from '../elements/marks.js';
import { subnav } from '../elements/subnav.js';

const APPLIES = { component: 'for each component', before: 'once before', after: 'once after', weekly: 'every week' };

export const title = ({ camp }) => `Routine library, ${camp.doc.settings.name}`;

export async function load({ route, camp }) {
  const library = (await get('/api/tables/routines')).body;
  const names = { roles: new Map(library.roles.map(role => [role.code, `${role.code}: ${role.name}`])), areas: new Map(library.areas.map(area => [area.code, `${area.code}: ${area.name}`])), factors: new Map() };
  const routine = library.routines.find(each => each.code === route.rest[0]);
  if (route.rest[0] && !routine) throw Object.assign(new Error(`There is no routine "${route.rest[0]}" in the library.`), { status: 404 });
  const session = routine && new Session({ fields: copying(routine, names), value: firstCopy(routine, camp), etag: null, address: `/api/campaigns/${encodeURIComponent(camp.id)}/routines/from-library`, method: 'POST' });
  return { library, routine, session, names, find: '' };
}

export const body = page => (page.data.routine ? one(page) : all(page));

function all({ camp, data, redraw }) {
  const words = data.find.trim().toLowerCase();
  const found = data.library.routines.filter(routine => words === '' || `${routine.name} ${routine.handbook_techniques.join(' ')} ${APPLIES[routine.applies]}`.toLowerCase().includes(words));
  return html`<div class="lead"><div><h1>${plural(data.library.routines.length, 'routine')} ready to copy</h1><p class="under">Set-up, cutting and take-down for each technique, lifting and packing. Every duration is a planning value: replace it by what was timed on the site.</p></div></div>
    ${subnav(camp, 'basis', 'library')}
    <section class="panel"><form class="tools" @submit=${event => event.preventDefault()}><div class="field"><label for="find-routine">Find</label><div class="entry"><input id="find-routine" type="search" .value=${data.find} @input=${event => { data.find = event.target.value; redraw(); }}></div></div></form>
      <p class="small muted" role="status">${found.length} of ${data.library.routines.length}</p>
      <div class="table" tabindex="0" role="region" aria-label="Routines"><table><thead><tr><th scope="col">Routine</th><th scope="col">Its tasks arise</th><th scope="col" class="n mid-only">Tasks</th><th scope="col" class="n mid-only">Steps</th></tr></thead>
        <tbody>${found.map(routine => html`<tr><th scope="row"><a href=${link(camp.id, 'library', routine.code)}>${sentence(routine.name)}</a></th><td>${APPLIES[routine.applies]}</td><td class="n mid-only">${routine.tasks.length}</td><td class="n mid-only">${routine.tasks.reduce((sum, task) => sum + task.steps.length, 0)}</td></tr>`)}</tbody></table></div></section>`;
}

function one({ camp, tables, data, redraw }) {
  const { routine, session } = data;
  return html`<div class="lead"><div><p class="crumb"><a href=${link(camp.id, 'library')}>Routine library</a></p><h1>${sentence(routine.name)}</h1>
      <p class="under">Its tasks arise ${APPLIES[routine.applies]}. Counted by: ${routine.drivers.map(driver => driverWord(driver, 1)).join(', ')}.</p></div></div>
    <div class="stack"><section class="panel" data-may="POST /api/campaigns/{id}/routines/from-library"><h2>Copy it into the campaign</h2>
        ${routine.assumed_wear ? html`<p class="small"><span class="mark">assumption</span> Counted with ${[routine.assumed_wear.filter_life_h ? `a filter life of ${three(routine.assumed_wear.filter_life_h, 'h')}` : '', routine.assumed_wear.drum_kg ? `${three(routine.assumed_wear.drum_kg, 'kg')} in a drum` : ''].filter(Boolean).join(' and ')} where the technique names none.</p>` : nothing}
        ${routine.applies === 'component' && routine.handbook_techniques.length > 0 ? html`<p class="small">Faults are counted by the shift; for a technique whose fault rate is known, one by one at that rate.</p>` : nothing}
        ${askForm({ session, camp, tables, redraw, verb: 'Copy it', label: 'Copy the routine', submit: () => copy(camp, data, redraw) })}</section>
      ${routine.tasks.map(task => html`<section class="panel"><h2>${task.name}</h2>${task.after.length > 0 ? html`<p class="small muted">Waits for ${task.after.join(', ')}.</p>` : nothing}${steps(task)}</section>`)}</div>`;
}

const steps = task => html`<div class="table" tabindex="0" role="region" aria-label=${`Steps of ${task.name}`}><table><thead><tr><th scope="col">Step</th><th scope="col">Hours each: low, likely, high</th><th scope="col" class="mid-only">Who is where</th><th scope="col" class="mid-only">Known</th></tr></thead>
  <tbody>${task.steps.map(step => html`<tr><th scope="row">${step.name}<span class="sub">${step.mode}${step.alongside ? ', alongside' : ''}</span></th><td>${three(step.hours_each, 'h')}<span class="sub">for a ${driverWord(step.driver, 1)}</span></td>
    <td class="mid-only">${step.staff.map(line => html`<span class="sub">${plain(line.people)} ${line.role}, ${line.area}${line.presence === 1 ? '' : `, ${percent(line.presence)} of the time`}</span>`)}</td><td class="mid-only">${originMark(step.origin)}</td></tr>`)}</tbody></table></div>`;

async function copy(camp, data, redraw) {
  const answer = await data.session.sendAs(value => copied(data.routine, value), '');
  if (!answer) {
    redraw();
    announce();
    return;
  }
  forget(camp.id);
  say('Copied. Change it here as you need.');
  location.hash = link(camp.id, 'edit', 'routines', answer.body.code);
}
