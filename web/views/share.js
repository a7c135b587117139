// Share the dose: who takes how much now, who would after a new sharing, and taking it.
import { html, nothing } from '../lib/vendor.js';
import { ask } from '../lib/api.js';
import { forget } from '../lib/campaign.js';
import { say } from '../lib/focus.js';
import { link } from '../lib/route.js';
import { heading, plural, sentence, verdictWord } from '../lib/words.js';
import { decimalsFor, fixed, msv, msvFixed, msvTyped, toMsv } from '../lib/units.js';
import { day, pick, refs, rows } from '../forms/field.js';
import { announce, askForm } from '../forms/page.js';
import { Session } from '../forms/session.js';
import { missing } from '../elements/missing.js';
import { doseStrip, stripKey } from '../elements/dose-strip.js';

const fields = [rows('away', 'Who is away', 'time away', [pick('worker', 'Person', refs('workers')), day('from', 'From'), day('until', 'Until')], { line: true, hint: 'Both days included. Nobody away is planned for a task that touches those days.' })];

export const title = ({ camp }) => `Share the dose, ${camp.doc.settings.name}`;

export function load({ camp }) {
  const address = `/api/campaigns/${encodeURIComponent(camp.id)}/roster`;
  return { session: new Session({ fields, value: { away: [] }, etag: null, address: `${address}/proposal`, method: 'POST' }), address, answer: null, asked: null, etag: null, refusal: null };
}

export function body({ camp, tables, data, redraw }) {
  const { answer, refusal } = data;
  return html`<div class="lead"><div><p class="crumb"><a href=${link(camp.id, 'people')}>People</a></p><h1>${answer ? heading(answer.sentence) : 'Share the dose'}</h1>
      <p class="under">The least possible highest share of what is allowed, by a linear programme, then in whole shifts. Limits, roles, full crews and the hours of a shift are kept. Nothing changes until you take it.</p></div></div>
    <div class="stack">${missing(camp)}
      ${camp.missing ? nothing : html`<section class="panel stack"><h2>What is given</h2>${askForm({ session: data.session, camp, tables, redraw, verb: 'Work out a sharing', label: 'What is given', submit: () => propose(data, redraw) })}</section>`}
      ${answer ? html`<section class="panel stack" id="proposal" tabindex="-1" aria-labelledby="proposal-title">${answer.feasible ? proposed(camp, data, redraw) : impossible(answer)}
        ${refusal ? html`<div class="summary" id="refusal" tabindex="-1"><h3>${refusal.title}</h3><ul>${refusal.lines.map(line => html`<li>${line}</li>`)}</ul></div>` : nothing}
        <ul class="small muted">${answer.notes.map(note => html`<li>${note}</li>`)}</ul></section>` : nothing}
    </div>`;
}

const impossible = answer => html`<h2 id="proposal-title">No sharing keeps every rule</h2><p>What would have to give:</p><ul class="because">${answer.binding.map(words => html`<li>${words}</li>`)}</ul>`;

function proposed(camp, data, redraw) {
  const { answer } = data;
  const top = Math.max(...answer.people.flatMap(each => [each.before_usv, each.after_usv]));
  const decimals = Math.max(2, decimalsFor(answer.people.map(each => toMsv(each.before_usv))));
  const percent = part => `${fixed(100 * part, 1)} %`;
  return html`<h2 id="proposal-title">${answer.better ? 'Each person before and after' : 'Nothing to take'}</h2>
    <div class="table" tabindex="0" role="region" aria-label="Before and after"><table><thead><tr><th scope="col">Person</th><th scope="col" class="n">now, mSv</th><th scope="col" class="n">after, mSv</th><th scope="col" class="strip-cell"><span class="spoken">Now above, after below, as strips</span></th>
        <th scope="col" class="n">of what is allowed, now</th><th scope="col" class="n">after</th><th scope="col" class="mid-only">Bounded most by</th><th scope="col" class="mid-only">Verdict after</th></tr></thead>
      <tbody>${answer.people.map(each => html`<tr data-worker=${each.worker}><th scope="row"><a href=${link(camp.id, 'people', each.worker)}>${each.worker}</a></th><td class="n">${msvFixed(each.before_usv, decimals)}</td><td class="n" data-figure="after">${msvFixed(each.after_usv, decimals)}</td>
        <td class="strip-cell"><div class="pair-strip">${doseStrip({ value: each.before_usv, top })}${doseStrip({ value: each.after_usv, top })}</div></td>
        <td class="n">${percent(each.before_ratio)}</td><td class="n">${percent(each.after_ratio)}</td><td class="mid-only">${each.rule}, ${msvTyped(each.allowance_usv)} mSv${each.prior_usv > 0 ? `, ${msv(each.prior_usv)} taken before` : ''}</td>
        <td class="mid-only">${each.after_verdict === 'within' ? 'within' : html`<span class="mark decide">${verdictWord(each.after_verdict)}</span>`}</td></tr>`)}</tbody></table></div>
    <p class="small muted">Upper strip: now. Lower strip: after.</p>${stripKey('planned')}
    <p>Collective dose ${change(answer)}. No sharing could bring the highest below ${percent(answer.bound)}; this one reaches ${percent(answer.highest_after)}${answer.proven ? ', and no sharing in whole shifts is better' : `, ${fixed(100 * (answer.highest_after / answer.bound - 1), 1)} % above that bound; whether whole shifts can do better is not proven`}.</p>
    ${answer.better ? html`<p class="doing"><button class="button main" type="button" ?disabled=${data.session.busy} @click=${() => take(camp, data, redraw)}>Take this sharing</button> <span class="small muted">${plural(answer.entries.filter(entry => entry.task).length, 'roster entry', 'roster entries')} for single tasks; the others stay as they are.</span></p>` : nothing}`;
}

function change({ taken_before_person_usv: before, taken_after_person_usv: after }) {
  const by = after - before;
  return Math.abs(by) < 0.5 ? `stays at ${msv(after)} person-mSv` : `${by > 0 ? 'rises' : 'falls'} by ${msv(Math.abs(by))} to ${msv(after)} person-mSv`;
}

async function propose(data, redraw) {
  let sent;
  data.session.busy = true;
  redraw();
  const answer = await data.session.sendAs(value => { sent = value; return value; }, '');
  data.session.busy = false;
  if (answer) {
    data.session.refuse([]);
    Object.assign(data, { answer: answer.body, asked: sent, etag: answer.etag, refusal: null });
  }
  redraw();
  if (!answer) announce();
  else document.getElementById('proposal')?.focus();
}

async function take(camp, data, redraw) {
  data.session.busy = true;
  redraw();
  try {
    await ask('POST', `${data.address}/take`, { body: data.asked, etag: data.etag });
    forget(camp.id);
    say('The sharing is taken into the roster.');
    location.hash = link(camp.id, 'people');
  } catch (problem) {
    data.session.busy = false;
    if (problem.status === 412) forget(camp.id);
    data.refusal = { title: problem.status === 412 ? 'Somebody changed the campaign meanwhile; nothing was taken' : 'Not taken; the roster is as it was',
      lines: problem.status === 412 ? ['Work it out anew: it may differ now.'] : problem.errors.length > 0 ? problem.errors.map(error => `${sentence(error.detail)}${error.field ? ` (${error.field})` : ''}`) : [problem.message] };
    redraw();
    document.getElementById('refusal')?.focus();
  }
}
