import { html, nothing } from '../lib/vendor.js';
import { doseStrip, stripKey } from '../elements/dose-strip.js';
import { periodResults } from '../elements/period-results.js';
import { link } from '../lib/route.js';
import { NAMES, known, seesPeople } from '../lib/who.js';
import { nameOf, verdictWord, wordOf } from '../lib/words.js';
import { day, msv, msvTyped, rate, sig, stay } from '../lib/units.js';

export function personDetail({ route, camp, data, redraw }) {
  const worker = camp.byCode.workers.get(route.rest[0]);
  const person = camp.forecast?.people.find(each => each.worker === route.rest[0]);
  if (!worker) return html`<div class="lead"><div><h1>There is no person "${route.rest[0]}"</h1><p class="under"><a href=${link(camp.id, 'people')}>All people</a></p></div></div>`;
  return html`
    <div class="lead"><div><p class="crumb"><a href=${link(camp.id, 'people')}>People</a></p><h1>${worker.code}${person ? `: ${msv(person.usv)} mSv planned, ${verdictWord(person.verdict)}` : ''}</h1>
      <p class="under">${worker.name === worker.code ? '' : `${worker.name}. `}${worker.roles.join(', ')}.${person ? ` ${sig(person.hours)} h at work, ${sig(person.field_hours)} h in the areas.` : ''}</p></div>
      <div class="doing"><a class="button" href=${link(camp.id, 'edit', 'workers', worker.code)}>Edit the person</a></div></div>
    <div class="grid">${person ? html`
      <section class="panel w7"><h2>Against constraints and limits</h2>${bounds(camp, person)}${stripKey('before', 'planned', 'bound', 'over')}</section>
      <section class="panel w5"><h2>How long the allowance lasts</h2>${stays(camp, person)}</section>
      <section class="panel w5"><h2>Dose by group of tasks</h2>${groups(person)}</section>
      <section class="panel w7"><h2>Tasks with most dose</h2>${tasks(camp, person)}</section>` : nothing}
      ${data?.results ? periodResults({ camp, worker: worker.code, results: data.results, redraw }) : nothing}
      <section class="panel"><h2>Received before</h2>${seen(worker) ? before(worker) : html`<p>${NAMES} Limits of the law are checked with what was received, and only the verdict is shown.</p>`}</section></div>`;
}

const seen = worker => seesPeople() || known()?.account?.worker === worker.code;

function bounds(camp, person) {
  const rows = [
    ...person.constraints.map(each => ({ name: `Constraint ${each.constraint}`, before: 0, planned: each.planned_usv, limit: each.constraint_usv, word: each.kept ? 'within' : 'above the constraint' })),
    ...person.periods.map(({ period, worst }) => ({ name: `Limit, ${wordOf(period).toLowerCase()}`, label: worst.label, before: worst.before_usv, planned: worst.planned_usv, limit: worst.limit_usv, missing: worst.missing, word: verdictWord(worst.verdict) })),
  ];
  if (rows.length === 0) return html`<p>No constraint covers this person's work.</p>`;
  return html`<div class="table" tabindex="0" role="region" aria-label="Constraints and limits"><table><thead><tr><th scope="col">Bound</th><th scope="col" class="n">before + planned = total, mSv</th><th scope="col" class="n">of</th><th scope="col" class="strip-cell mid-only"><span class="spoken">Dose as a strip</span></th><th scope="col">Verdict</th></tr></thead>
    <tbody>${rows.map(row => html`<tr><th scope="row">${row.name}${row.label ? html`<span class="sub">${row.label}</span>` : nothing}</th><td class="n">${msv(row.before)} + ${msv(row.planned)} = ${msv(row.before + row.planned)}</td><td class="n">${msvTyped(row.limit)}</td>
      <td class="strip-cell mid-only">${doseStrip({ value: row.planned, before: row.before, bound: row.limit })}</td>
      <td>${row.word === 'within' ? 'within' : html`<span class="mark decide">${row.word}</span>`}${row.missing?.length ? html`<span class="sub">no dose for ${row.missing.join(', ')}</span>` : nothing}</td></tr>`)}</tbody></table></div>`;
}

function stays(camp, person) {
  if (!seen({ code: person.worker })) return html`<p>${NAMES}</p>`;
  if (person.allowance_usv === undefined) return html`<p>Not known: no constraint is set, or doses received before are missing.</p>`;
  return html`<p class="small muted">${msv(person.allowance_usv)} mSv on the first day ÷ the rate of that day</p><div class="table" tabindex="0" role="region" aria-label="Stay times"><table><thead><tr><th scope="col">Area</th><th scope="col" class="n">µSv/h</th><th scope="col" class="n">stay</th></tr></thead>
    <tbody>${[...person.stays].sort((a, b) => b.usv_per_h - a.usv_per_h).map(each => html`<tr><th scope="row">${nameOf(camp, 'areas', each.area)}</th><td class="n">${rate(each.usv_per_h)}</td><td class="n">${each.hours === undefined ? 'no limit' : stay(each.hours)}</td></tr>`)}</tbody></table></div>`;
}

function groups(person) {
  const sorted = [...person.groups].sort((a, b) => b.usv - a.usv);
  return html`<div class="table" tabindex="0" role="region" aria-label="Dose by group"><table><thead><tr><th scope="col">Group</th><th scope="col" class="n">mSv</th><th scope="col" class="strip-cell"><span class="spoken">Dose as a strip</span></th></tr></thead>
    <tbody>${sorted.map(group => html`<tr><th scope="row">${group.group}</th><td class="n">${msv(group.usv)}</td><td class="strip-cell">${doseStrip({ value: group.usv, top: sorted[0].usv })}</td></tr>`)}</tbody></table></div>`;
}

function tasks(camp, person) {
  const names = new Map(camp.forecast.tasks.map(task => [task.id, task]));
  const top = [...person.tasks].sort((a, b) => b.usv - a.usv).slice(0, 12);
  return html`<div class="table" tabindex="0" role="region" aria-label="Tasks of the person"><table><thead><tr><th scope="col">Task</th><th scope="col" class="mid-only">starts</th><th scope="col" class="n">hours</th><th scope="col" class="n">mSv</th></tr></thead>
    <tbody>${top.map(each => {
      const task = names.get(each.task);
      return html`<tr><th scope="row"><a href="${link(camp.id, 'tasks')}?task=${encodeURIComponent(each.task)}">${task?.name ?? each.task}</a>${task?.component ? html`<span class="sub">${nameOf(camp, 'components', task.component)}</span>` : nothing}</th><td class="mid-only nowrap">${day(each.on)}</td><td class="n">${sig(each.hours)}</td><td class="n">${msv(each.usv)}</td></tr>`;
    })}</tbody></table></div>${person.tasks.length > 12 ? html`<p class="small muted">and ${person.tasks.length - 12} more.</p>` : nothing}`;
}

const before = worker => html`<p>${worker.years.map(each => `${each.year}: ${msvTyped(each.usv)} mSv`).join(' · ') || 'No doses are given.'}</p>
  ${worker.months.length ? html`<p class="small">By month: ${worker.months.map(each => `${each.month}: ${msvTyped(each.usv)} mSv`).join(' · ')}</p>` : nothing}
  <p class="small muted">${worker.exposed_since ? `Exposed work since ${worker.exposed_since}. ` : ''}${worker.dose_source}</p>`;
