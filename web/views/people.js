// Who is near the constraint, and how evenly the dose is shared.
import { html, nothing } from '../lib/vendor.js';
import { doseStrip, stripKey } from '../elements/dose-strip.js';
import { addLink, editLink, kindPanel } from '../elements/manage.js';
import { resultsOf } from '../elements/period-results.js';
import { missing } from '../elements/missing.js';
import { personDetail } from './person-detail.js';
import { byNearness, nearestBounds, seesOutcomes } from '../lib/nearness.js';
import { eightInTen } from '../lib/dots.js';
import { latest } from '../lib/runs.js';
import { tickKey, tickStrip } from '../elements/tick-strip.js';
import { bands, countIn } from '../lib/bands.js';
import { link } from '../lib/route.js';
import { NAMES, seesPeople } from '../lib/who.js';
import { nameOf, plural, verdictWord } from '../lib/words.js';
import { day, decimalsFor, msv, msvFixed, msvTyped, plain, toMsv } from '../lib/units.js';

export const title = ({ route, camp }) => `${route.rest[0] ?? 'People'} of ${camp.doc.settings.name}`;

export function body(page) {
  return page.route.rest[0] ? personDetail(page) : all(page);
}

export async function load({ camp, route }) {
  if (route.rest[0]) return { results: camp.byCode.workers.has(route.rest[0]) ? await resultsOf(camp, route.rest[0]) : null };
  return camp.forecast ? { run: await latest(camp.id) } : {};
}

function all({ camp, data }) {
  const near = camp.forecast ? byNearness(camp.forecast) : [];
  const outlook = data.run?.outlook && seesOutcomes(data.run.outlook) ? data.run.outlook : undefined;
  return html`
    <div class="lead"><div><h1>${outlook ? headingOf(outlook) : heading(camp, near)}</h1><p class="under">Sorted by nearness to what bounds each person most: a constraint or a limit. ${seesPeople() ? 'Names are for the radiation protection officer and the person.' : NAMES}</p></div>
      <div class="doing">${camp.forecast && camp.doc.workers.length > 0 && seesPeople() ? html`<a class="button" href=${link(camp.id, 'share')}>Share the dose</a>` : nothing}${addLink(camp, 'workers')}</div></div>
    <div class="grid">
      ${missing(camp)}
      ${camp.doc.workers.length === 0 ? html`<section class="panel empty"><h2>Nobody takes part yet</h2><p>People bring the roles that tasks ask for, and the doses they received before.</p>${addLink(camp, 'workers', null, 'Add the first person')}</section>` : nothing}
      ${near.length > 0 ? html`<section class="panel w8">${outlook ? outcomes(camp, outlook, data.run.run, near) : html`<h2>Each person's dose</h2>${strips(camp, near)}${stripKey('planned', 'bound', 'over')}`}</section>
        <section class="panel w4"><h2>How the dose is shared</h2>${shares(camp)}</section>` : nothing}
      ${camp.forecast ? nothing : kindPanel(camp, 'workers', { empty: 'Nobody yet.', head: ['Person', 'Roles'], row: worker => [editLink(camp, 'workers', worker), worker.roles.join(', ')] })}
      <div class="w6">${targets(camp)}</div><div class="w6">${constraints(camp)}</div>
      ${kindPanel(camp, 'roster', {
    empty: 'Without an entry, everybody with a role shares it evenly.', head: ['Entry', 'Role', '~Only in group', '~Only at', 'Who, by weight'],
    row: entry => [editLink(camp, 'roster', entry), entry.role, entry.group ?? 'all', entry.component ? nameOf(camp, 'components', entry.component) : 'all', entry.members.map(member => `${member.worker} ${plain(member.weight)}`).join(', ')],
  })}
    </div>`;
}

function heading(camp, near) {
  if (near.length === 0) return plural(camp.doc.workers.length, 'person', 'people');
  const over = near.filter(each => each.part > 1);
  return over.length === 0 ? `All ${near.length} people stay within what is allowed` : `${over.map(each => each.person.worker).join(', ')} would be above what is allowed`;
}

function headingOf(outlook) {
  const above = nearestBounds(outlook).filter(row => row.above > 0);
  return above.length === 0 ? 'Nobody ends above a constraint in any of 20 outcomes' : `${above[0].worker} ends above a constraint in ${above[0].above} of 20 outcomes${above.length > 1 ? `, ${plural(above.length - 1, 'other')} in fewer` : ''}`;
}

/** Ticks and counts are those of the last run; plan and verdict against the law are the forecast's. */
function outcomes(camp, outlook, run, near) {
  const rows = nearestBounds(outlook);
  const top = Math.max(...rows.map(row => Math.max(row.usv.outcomes[19], row.bound ?? 0)), 1);
  const plan = new Map(near.map(each => [each.person.worker, each.person]));
  return html`<div class="head"><h2>Each person's dose, in 20 equally likely outcomes</h2><span class="small muted">run ${run.number}</span></div>
    <div class="table" tabindex="0" role="region" aria-label="People"><table><thead><tr><th scope="col">Person</th><th scope="col" class="n">8 in 10 between, mSv</th><th scope="col" class="strip-cell"><span class="spoken">Outcomes as a strip</span></th>
    <th scope="col" class="n">above</th><th scope="col" class="n mid-only">constraint</th><th scope="col">Limits</th></tr></thead>
    <tbody>${rows.map(row => html`<tr><th scope="row"><a href=${link(camp.id, 'people', row.worker)}>${row.worker}</a><span class="sub">${plan.get(row.worker)?.roles.join(', ')}</span></th>
      <td class="n nowrap">${eightInTen(row.usv).map(usv => msvFixed(usv, 2)).join(' – ')}</td><td class="strip-cell">${tickStrip({ outcomes: row.usv.outcomes, plan: plan.get(row.worker)?.constraints.find(each => each.constraint === row.constraint)?.planned_usv, bound: row.bound, top })}</td>
      <td class="n nowrap">${row.bound ? html`<span class=${row.above > 0 ? 'mark decide' : ''}>${row.above} of 20</span>` : 'no constraint'}</td><td class="n mid-only">${row.bound ? `${msvTyped(row.bound)} (${row.constraint})` : ''}</td>
      <td>${limitWord(plan.get(row.worker)?.verdict)}</td></tr>`)}</tbody></table></div>${tickKey('outcomes', 'plan', 'bound', 'above')}`;
}

const limitWord = verdict => (verdict === 'over-limit' || verdict === 'not-known' ? html`<span class="mark decide">${verdictWord(verdict)}</span>` : 'within');

function strips(camp, near) {
  const top = Math.max(...near.map(each => Math.max(each.usv, each.what.startsWith('constraint') ? each.bound : 0)));
  const decimals = Math.max(2, decimalsFor(near.map(each => toMsv(each.usv))));
  return html`<div class="table" tabindex="0" role="region" aria-label="People"><table><thead><tr><th scope="col">Person</th><th scope="col" class="n">mSv</th><th scope="col" class="strip-cell"><span class="spoken">Dose as a strip</span></th>
    <th scope="col" class="n mid-only">of</th><th scope="col" class="mid-only">which is the</th><th scope="col">Verdict</th></tr></thead>
    <tbody>${near.map(each => html`<tr><th scope="row"><a href=${link(camp.id, 'people', each.person.worker)}>${each.person.worker}</a><span class="sub">${each.person.roles.join(', ')}</span></th>
      <td class="n">${msvFixed(each.usv, decimals)}</td><td class="strip-cell">${doseStrip({ value: each.usv - each.before, before: each.before, bound: each.bound, top })}</td>
      <td class="n mid-only">${each.bound ? msvTyped(each.bound) : ''}</td><td class="mid-only">${each.what}</td>
      <td>${each.person.verdict === 'within' ? 'within' : html`<span class="mark decide">${verdictWord(each.person.verdict)}</span>`}</td></tr>`)}</tbody></table></div>`;
}

function shares(camp) {
  const { people, roles } = camp.forecast;
  const edges = bands(people.map(person => person.usv));
  return html`<p class="small muted">People of each role, by the dose of this campaign in mSv</p><div class="table" tabindex="0" role="region" aria-label="Role and dose"><table><thead><tr><th scope="col">Role</th>
    ${edges.map(([low, high]) => html`<th scope="col" class="n">${high === Infinity ? `${msvTyped(low)} and more` : `${msvTyped(low)} to ${msvTyped(high)}`}</th>`)}</tr></thead>
    <tbody>${roles.map(({ role }) => html`<tr><th scope="row">${role}</th>${edges.map(edge => {
      const count = countIn(people.filter(person => person.roles.includes(role)).map(person => person.usv), edge);
      return html`<td class="n">${count === 0 ? html`<span class="muted">·<span class="spoken">none</span></span>` : count}</td>`;
    })}</tr>`)}</tbody></table></div>`;
}

const scopeWords = (camp, each) => (each.scope === 'campaign' ? 'the campaign' : each.scope === 'component' ? nameOf(camp, 'components', each.of) : `${each.scope} ${each.of}`);
const verdictOf = found => (!found ? '' : found.kept ? 'kept' : html`<span class="mark decide">above</span>`);

const targets = camp => kindPanel(camp, 'targets', {
  empty: 'No target yet. It says which collective dose is planned for.', head: ['For', '#person-mSv', '#forecast', 'Verdict', '~Valid from'],
  row: target => {
    const found = camp.forecast?.targets.find(each => each.code === target.code);
    return [editLink(camp, 'targets', target, scopeWords(camp, target)), msvTyped(target.person_usv), found ? msv(found.person_usv) : 'not in force', verdictOf(found), day(target.valid_from)];
  },
});

const constraints = camp => kindPanel(camp, 'constraints', {
  empty: 'No constraint yet. It bounds what one person may plan to take.', head: ['For', '#mSv', '#highest', 'Verdict', '~Valid from'],
  row: constraint => {
    const found = camp.forecast?.constraints.find(each => each.code === constraint.code);
    return [editLink(camp, 'constraints', constraint, scopeWords(camp, constraint)), msvTyped(constraint.individual_usv), found ? html`${found.worker ?? ''} ${msv(found.highest_usv)}` : 'not in force', verdictOf(found), day(constraint.valid_from)];
  },
});
