// Two pages A4 of one frozen run, to be signed on paper.
import { html, nothing } from '../lib/vendor.js';
import { get } from '../lib/api.js';
import { weekEnds } from '../elements/fan-dots.js';
import { eightInTen } from '../lib/dots.js';
import { day, msv, msvTyped } from '../lib/units.js';

const MOST = 8;

export const title = ({ camp, data }) => `Review sheet of run ${data.run.number}, ${camp.doc.settings.name}`;

export async function load({ route, camp }) {
  const at = `/api/campaigns/${encodeURIComponent(camp.id)}`;
  const run = encodeURIComponent(route.rest[0] ?? 'latest');
  const { body } = await get(`${at}/runs/${run}`);
  if (!body.outlook) throw Object.assign(new Error('This run has no answer, so there is nothing to print. Ask for a new one.'), { status: 404 });
  const [{ body: frozen }, { body: stand }, { body: reviews }] = await Promise.all([get(`${at}/runs/${body.run.number}/document`), get(`${at}/standing`), get(`${at}/reviews`)]);
  return { ...body, frozen, stand, reviews };
}

export function body({ camp, data }) {
  const { run, outlook, frozen, stand, reviews } = data;
  const [low, high] = eightInTen(outlook.person_usv);
  const target = outlook.targets.find(each => each.scope === 'campaign');
  const latest = stand.run === run.number;
  const ask = latest ? stand.decide : reviews.findings.filter(found => found.weight === 'decide');
  const foot = (page) => html`<footer class="sheet-foot"><span>Review C${camp.id}-R${run.number}, ${frozen.settings.name}, run ${run.number}, data of ${run.asked_at.slice(0, 16).replace('T', ' ')} UTC, page ${page} of 2</span>
    <span>Content check <code>${run.inputs.slice(0, 16)}</code></span>${outlook.invented ? html`<strong>Demo data</strong>` : nothing}</footer>`;
  return html`<div class="sheet">
    <div class="lead sheet-screen"><div></div><div class="doing"><button class="button" @click=${() => window.print()}>Print</button><a class="button" href=${`/api/campaigns/${encodeURIComponent(camp.id)}/runs/${run.number}/sheet.pdf`}>As PDF</a></div></div>
    <section class="sheet-page" aria-label="Page 1">
      <h1>${target ? `${20 - target.kept.of20} of 20 equally likely outcomes finish above the ALARA target` : `8 in 10 outcomes finish between ${msv(low)} and ${msv(high)} person-mSv; no target is set`}</h1>
      <p>8 in 10 outcomes finish between ${msv(low)} and ${msv(high)} person-mSv${target ? `, the target is ${msvTyped(target.person_usv)} person-mSv` : ''}; the last day lies between ${day(outlook.finish.outcomes[2])} and ${day(outlook.finish.outcomes[17])}.</p>
      <fan-dots .data=${picture(outlook, stand, latest, target)}></fan-dots>
      <h2>To be decided</h2>
      <div class="table" tabindex="0" role="region" aria-label="To be decided"><table><thead><tr><th scope="col">Matter</th><th scope="col">Decided</th><th scope="col">Owner</th><th scope="col">By</th></tr></thead>
        <tbody>${[...ask.slice(0, MOST).map(found => found.fact), '', ''].map(fact => html`<tr><td>${fact}</td><td class="write"></td><td class="write"></td><td class="write"></td></tr>`)}</tbody></table></div>
      ${ask.length > MOST ? html`<p class="small">${ask.length - MOST} more stand on the page Standing.</p>` : nothing}${foot(1)}
    </section>
    <section class="sheet-page" aria-label="Page 2">
      <h2>People</h2>${table('People', ['Person', 'Half end below, mSv', '95 of 100 end below, mSv', 'Nearest constraint kept in'], outlook.people.map(person => (person.usv ? [person.worker, msv(person.usv.p50), msv(person.usv.p95), nearest(person)] : [person.worker, 'not shown to you', '', ''])))}
      <h2>Tasks with most dose</h2>${table('Tasks with most dose', ['Task', 'Half end below, person-mSv', '95 of 100 end below'], [...outlook.tasks].sort((a, b) => b.usv.p50 - a.usv.p50).slice(0, MOST).map(task => [task.name, msv(task.usv.p50), msv(task.usv.p95)]))}
      <h2>Assumptions older than allowed</h2>${old(frozen, reviews.today)}
      <h2>What decides most</h2>${table('What decides most', ['Input', 'Its lowest tenth, person-mSv', 'Its highest tenth'], outlook.sensitivity.slice(0, 4).map(input => [input.name, msv(input.low_usv), msv(input.high_usv)]))}
      <h2>Signatures</h2><dl class="sign-here">${['Radiation protection officer', 'Project manager', 'Work supervisor'].map(who => html`<div><dt>${who}</dt><dd>Name, date, signature</dd></div>`)}</dl>${foot(2)}
    </section></div>`;
}

function picture(outlook, stand, latest, target) {
  const last = outlook.finish.outcomes[19];
  const weeks = outlook.weeks.filter((week, i) => i === 0 || week.starts <= last);
  const asOf = outlook.as_of;
  return { weeks: weeks.map(week => ({ starts: week.starts, spread: week.cumulative })), ends: weekEnds(weeks, last), spread: outlook.person_usv, targetUsv: target?.person_usv,
    received: asOf ? stand.received.days.filter(each => each.on <= asOf) : [], plan: [], asOf, start: outlook.start, runs: null, weekly: false, title: 'Cumulative dose', desc: 'Cumulative person-mSv, landing in 20 equally likely outcomes.' };
}

const nearest = person => (person.bounds.length === 0 ? 'none is set' : `${Math.min(...person.bounds.map(bound => bound.kept.of20))} of 20`);

const old = (frozen, today) => {
  const past = (frozen.surveys ?? []).filter(survey => survey.valid_until < today);
  return past.length === 0 ? html`<p>None: every survey is within its last day.</p>` : table('Assumptions older than allowed', ['Survey', 'Area', 'Read on', 'Valid until'], past.map(survey => [survey.code, survey.area, day(survey.surveyed_on), day(survey.valid_until)]));
};

const table = (name, head, rows) => html`<div class="table" tabindex="0" role="region" aria-label=${name}><table><thead><tr>${head.map((words, i) => html`<th scope="col" class=${i ? 'n' : ''}>${words}</th>`)}</tr></thead>
  <tbody>${rows.map(row => html`<tr>${row.map((cell, i) => html`<td class=${i ? 'n' : ''}>${cell}</td>`)}</tr>`)}</tbody></table></div>`;
