// Order of removal: the planned order beside the one with the least dose, which links may go, and taking it.
import { html, nothing } from '../lib/vendor.js';
import { ask, get } from '../lib/api.js';
import { forget } from '../lib/campaign.js';
import { say } from '../lib/focus.js';
import { link } from '../lib/route.js';
import { heading, nameOf, sentence } from '../lib/words.js';
import { decimalsFor, duration, msv, msvFixed, toMsv } from '../lib/units.js';
import { doseStrip } from '../elements/dose-strip.js';
import { missing } from '../elements/missing.js';

export const title = ({ camp }) => `Order of removal, ${camp.doc.settings.name}`;

export async function load({ camp }) {
  const data = { address: `/api/campaigns/${encodeURIComponent(camp.id)}/order`, letGo: new Set(), answer: null, etag: null, busy: false, refusal: null };
  if (!camp.missing) await propose(data);
  return data;
}

async function propose(data) {
  const query = data.letGo.size > 0 ? `?let_go=${[...data.letGo].map(encodeURIComponent).join(',')}` : '';
  try {
    const found = await get(`${data.address}${query}`);
    Object.assign(data, { answer: found.body, etag: found.etag, refusal: null, asked: [...data.letGo] });
  } catch (problem) {
    if (problem.status !== 422 && problem.status !== 400) throw problem;
    data.refusal = refused('No order can be worked out', problem);
  }
}

export function body({ camp, data, redraw }) {
  const { answer, refusal } = data;
  return html`<div class="lead"><div><p class="crumb"><a href=${link(camp.id, 'cuts')}>Cuts</a></p><h1>${answer ? heading(answer.sentence) : 'Order of removal'}</h1>
      <p class="under">What still stands irradiates everyone. Nothing changes until you take an order.</p></div></div>
    <div class="stack">${missing(camp)}
      ${refusal ? html`<div class="summary" id="refusal" tabindex="-1"><h2>${refusal.title}</h2><ul>${refusal.lines.map(line => html`<li>${line}</li>`)}</ul></div>` : nothing}
      ${answer ? html`<section class="panel stack" id="orders">${orders(camp, data, redraw)}</section><section class="panel stack">${links(camp, data, redraw)}</section>
        <ul class="small muted">${answer.notes.map(note => html`<li>${note}</li>`)}</ul>` : nothing}
    </div>`;
}

function orders(camp, data, redraw) {
  const { answer } = data;
  const all = [...answer.planned, ...answer.proposed].map(each => each.model_person_usv);
  const [top, decimals] = [Math.max(...all), decimalsFor(all.map(toMsv))];
  const same = answer.planned.every((each, i) => each.component === answer.proposed[i].component);
  return html`<h2>${answer.better ? html`<span data-figure="saved">${msv(answer.saved_person_usv)}</span> person-mSv saved, by two full forecasts` : 'The planned order stands'}</h2>
    <p>Forecast of the plan: ${msv(answer.planned_person_usv, 4)} person-mSv${same ? '' : html`; in the proposed order: ${msv(answer.proposed_person_usv, 4)}`}. ${answer.proven ? 'By the model, no order that keeps the links costs less.' : html`Not proven: no order can be below ${msv(answer.model_bound_person_usv)} by the model, this one is at ${msv(answer.model_proposed_person_usv)}.`}</p>
    <div class="order-list"><div>${list(camp, 'Planned', answer.planned, top, decimals, answer.planned)}</div>${same ? nothing : html`<div>${list(camp, 'Proposed', answer.proposed, top, decimals, answer.planned)}</div>`}</div>
    <p class="small muted">Dose of each removal by the model, with the weekly tasks of its time. In all ${msv(answer.model_planned_person_usv)} planned${same ? '' : `, ${msv(answer.model_proposed_person_usv)} proposed`}.</p>
    ${answer.better ? html`<p class="doing"><button class="button main" type="button" ?disabled=${data.busy} @click=${() => take(camp, data, redraw)}>Take this order</button> <span class="small muted">Each component then waits for the one before it.</span></p>` : nothing}`;
}

function list(camp, words, places, top, decimals, planned) {
  return html`<h3>${words}</h3><div class="table" tabindex="0" role="region" aria-label=${`${words} order`}><table><thead><tr><th scope="col">Component</th><th scope="col" class="n">person-mSv</th><th scope="col" class="strip-cell"><span class="spoken">Dose as a strip</span></th><th scope="col" class="n">takes</th></tr></thead>
    <tbody>${places.map((each, i) => {
    const was = planned.findIndex(other => other.component === each.component);
    return html`<tr data-component=${each.component}><th scope="row">${i + 1}. <a href=${link(camp.id, 'edit', 'components', each.component)}>${each.name}</a>${was !== i ? html`<span class="sub">${was > i ? 'earlier' : 'later'}: planned as number ${was + 1}</span>` : nothing}</th>
      <td class="n">${msvFixed(each.model_person_usv, decimals)}</td><td class="strip-cell">${doseStrip({ value: each.model_person_usv, top })}</td><td class="n">${duration(each.hours)}</td></tr>`;
  })}</tbody></table></div>`;
}

function links(camp, data, redraw) {
  const own = data.answer.links.filter(each => !each.by_hand);
  const hand = data.answer.links.filter(each => each.by_hand);
  const codes = [...new Set(own.map(each => each.component))];
  const name = code => nameOf(camp, 'components', code);
  const turn = (code, kept) => { if (kept) data.letGo.delete(code); else data.letGo.add(code); redraw(); };
  const setAll = kept => { codes.forEach(code => turn(code, kept)); };
  return html`<h2>Which links are needed?</h2><p class="small muted">Take the tick away where a component waits for another only because somebody planned it so, not because it cannot be reached before.</p>
    ${codes.length === 0 ? html`<p>No component waits for another.</p>` : html`<form @submit=${event => { event.preventDefault(); again(data, redraw); }}><fieldset class="field wide"><legend>Needed</legend>
      <div class="ticks">${codes.map(code => html`<div class="tick"><input type="checkbox" id="need-${code}" .checked=${!data.letGo.has(code)} @change=${event => turn(code, event.target.checked)}><label for="need-${code}">${name(code)} waits for ${own.filter(each => each.component === code).map(each => name(each.after)).join(', ')}</label></div>`)}</div></fieldset>
      <div class="form-foot"><button class="button main" type="submit" ?disabled=${data.busy}>${data.busy ? 'Working it out …' : 'Find the best order'}</button><button class="button" type="button" @click=${() => setAll(false)}>Let all go</button><button class="button" type="button" @click=${() => setAll(true)}>Keep all</button></div></form>`}
    ${hand.length > 0 ? html`<p class="small">Always kept, because tasks added by hand ask for it: ${hand.map(each => `${name(each.component)} after ${name(each.after)}`).join('; ')}.</p>` : nothing}`;
}

async function again(data, redraw) {
  data.busy = true;
  redraw();
  await propose(data);
  data.busy = false;
  redraw();
  say(data.answer?.sentence ?? 'Not worked out.');
  document.querySelector('main h1')?.focus();
}

async function take(camp, data, redraw) {
  data.busy = true;
  redraw();
  try {
    await ask('POST', `${data.address}/take`, { body: { let_go: data.asked }, etag: data.etag });
    forget(camp.id);
    say('The order is taken into the plan.');
    location.hash = link(camp.id, 'cuts');
  } catch (problem) {
    data.busy = false;
    if (problem.status === 412) forget(camp.id);
    data.refusal = problem.status === 412 ? { title: 'Somebody changed the campaign meanwhile; nothing was taken', lines: ['Find the best order anew: it may differ now.'] } : refused('Not taken; the plan is as it was', problem);
    redraw();
    document.getElementById('refusal')?.focus();
  }
}

const refused = (words, problem) => ({ title: words, lines: problem.errors?.length > 0 ? problem.errors.map(error => `${sentence(error.detail)}${error.field ? ` (${error.field})` : ''}`) : [problem.message] });
