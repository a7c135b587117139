// How a component may be divided: three ways side by side, one of them taken.
import { html, nothing } from '../lib/vendor.js';
import { ask } from '../lib/api.js';
import { forget } from '../lib/campaign.js';
import { say } from '../lib/focus.js';
import { link } from '../lib/route.js';
import { plural, sentence } from '../lib/words.js';
import { sig } from '../lib/units.js';
import { dividing, firstQuestion, question } from '../forms/dividing.js';
import { announce, askForm } from '../forms/page.js';
import { Session } from '../forms/session.js';
import { aimWord, planCard } from '../elements/plan-card.js';
import { addLink } from '../elements/manage.js';

export const title = ({ data, camp }) => `Divide ${data.component.name}, ${camp.doc.settings.name}`;

export function load({ route, camp }) {
  const component = camp.byCode.components.get(route.rest[0]);
  if (!component) throw Object.assign(new Error(`There is no component "${route.rest[0] ?? ''}".`), { status: 404 });
  const address = `/api/campaigns/${encodeURIComponent(camp.id)}/components/${encodeURIComponent(component.code)}/segmentation`;
  return { component, session: new Session({ fields: dividing, value: firstQuestion(camp, component), etag: null, address, method: 'POST' }), answer: null, asked: null, etag: null, refusal: null };
}

export function body({ camp, tables, data, redraw }) {
  const { component, session } = data;
  const none = (camp.doc.packages ?? []).length === 0;
  return html`
    <div class="lead"><div><p class="crumb"><a href=${link(camp.id, 'cuts')}>Cuts</a></p><h1>Divide ${component.name}</h1>
      <p class="under">${sig(component.mass_kg)} kg, now ${plural(component.pieces, 'piece')} in ${plural(component.packages, 'package')}. Nothing changes until you take a plan.</p></div></div>
    <div class="stack">
      ${none ? html`<section class="panel empty"><h2>No package types yet</h2><p>A plan needs to know what the pieces go into.</p>${addLink(camp, 'packages', null, 'Add the first package type')}</section>` : html`
      <section class="panel"><h2>What is given</h2>${askForm({ session, camp: { ...camp }, tables, redraw, verb: 'Work out the plans', label: 'What is given', submit: () => plans(data, redraw),
    more: html`<p class="small muted"><a href=${link(camp.id, 'settings')}>Lifting gear of the settings</a> · <a href=${link(camp.id, 'edit', 'packages', session.draft.package_type.text)}>The package</a></p>` })}</section>`}
      ${data.answer ? answered(camp, data, redraw) : nothing}
    </div>`;
}

async function plans(data, redraw) {
  const { session } = data;
  session.busy = true;
  redraw();
  let sent;
  const answer = await session.sendAs(value => { sent = question(value); return sent; }, '');
  if (answer) Object.assign(data, { answer: answer.body, asked: sent, etag: answer.etag, refusal: null });
  session.busy = false;
  if (answer) session.refuse([]);
  redraw();
  if (!answer) announce();
  else document.getElementById('plans')?.focus();
}

function answered(camp, data, redraw) {
  const { answer, component, refusal } = data;
  return html`<section class="panel" id="plans" tabindex="-1" aria-labelledby="plans-title">
    <h2 id="plans-title">${answer.plans.length === 0 ? 'It cannot be divided so' : finding(answer)}</h2>
    ${answer.impossible ? html`<p><span class="mark decide">impossible</span> ${sentence(answer.impossible.text)}.</p>` : nothing}
    ${refusal ? html`<div class="summary" id="refusal" tabindex="-1"><h3>${refusal.title}</h3><ul>${refusal.lines.map(line => html`<li>${line}</li>`)}</ul>
      ${refusal.stale ? html`<button class="button main" @click=${() => plans(data, redraw)}>Work out the plans anew</button>` : nothing}</div>` : nothing}
    <div class="plans">${answer.plans.map(plan => planCard(plan, component.name, html`<button class="button main" data-may="POST /api/campaigns/{id}/components/{code}/segmentation/take" ?disabled=${data.session.busy} @click=${() => take(camp, data, plan, redraw)}>Take this plan<span class="spoken">: ${aimWord(plan.aim)}</span></button>`))}</div>
    <ul class="small muted">${answer.notes.map(note => html`<li>${note}</li>`)}<li>Kerf ${sig(answer.kerf_mm)} mm; ${plural(answer.tried, 'division')} tried; the pieces could not be fewer than ${answer.least_pieces}.</li></ul></section>`;
}

function finding({ plans }) {
  const kinds = new Set(plans.map(plan => plan.words)).size;
  const [low, high] = [Math.min(...plans.map(plan => plan.cut_metres)), Math.max(...plans.map(plan => plan.cut_metres))];
  return kinds === 1 ? `All aims lead to the same plan: ${plans[0].words}` : `${sentence(plural(kinds, 'plan'))}, ${sig(low)} to ${sig(high)} m of cuts`;
}

async function take(camp, data, plan, redraw) {
  data.session.busy = true;
  redraw();
  try {
    const taken = (await ask('POST', `${data.session.address}/take`, { body: { ...data.asked, aim: plan.aim }, etag: data.etag })).body;
    forget(camp.id);
    say(`${data.component.name} is divided: ${plan.words}, ${plural(taken.cuts.length, 'cut entry', 'cut entries')}.`);
    location.hash = link(camp.id, 'cuts');
  } catch (problem) {
    data.session.busy = false;
    const stale = problem.status === 412;
    if (stale) forget(camp.id);
    data.refusal = {
      stale, title: stale ? 'Somebody changed the campaign meanwhile; nothing was replaced' : 'This plan was not taken; nothing was replaced',
      lines: stale ? ['Work out the plans anew: they may differ now. What you gave above stays.'] : problem.errors.length > 0 ? problem.errors.map(error => `${sentence(error.detail)}${error.field ? ` (${error.field})` : ''}`) : [problem.message],
    };
    redraw();
    announce();
    document.getElementById('refusal')?.focus();
  }
}
