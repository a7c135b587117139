// What is authorised, held, reviewed and looked into, and what is due.
import { html, nothing } from '../lib/vendor.js';
import { ask, get } from '../lib/api.js';
import { reasonFor } from '../lib/reason.js';
import { link } from '../lib/route.js';
import { nameOf, plural, sentence } from '../lib/words.js';
import { day, msv, rate, sig } from '../lib/units.js';

const ITEMS = [['briefing', 'Briefing'], ['training', 'Training'], ['clothing', 'Clothing and respiratory protection'], ['coverage', 'Coverage'], ['dose_reduction', 'What keeps doses low'],
  ['frisking', 'Checks on leaving'], ['work_document', 'Work document no.']];
const plain = word => word.replace(/-/g, ' ');

export const title = ({ camp }) => `Reviews of ${camp.doc.settings.name}`;

export async function load({ camp }) {
  return { at: `/api/campaigns/${encodeURIComponent(camp.id)}`, all: (await get(`/api/campaigns/${encodeURIComponent(camp.id)}/reviews`)).body, trouble: null, proposals: new Map() };
}

export function body(page) {
  const { all, trouble } = page.data;
  const open = all.findings.filter(found => found.weight === 'decide').length;
  return html`<div class="lead"><div><h1>${open === 0 ? 'No review waits for anybody' : `${plural(open, 'review matter')} to decide`}</h1>
      <p class="under">As of ${day(all.today)}. Everything here is added and never changed; each step stands in the trail.</p></div>
      <div class="doing"><a class="button" href=${link(page.camp.id, 'standing')}>Standing</a></div></div>
    <div role="alert">${trouble ? html`<p class="panel">${trouble}</p>` : nothing}</div>
    <div class="stack">${due(page)}${authorisations(page)}${points(page)}${held(page)}${cases(page)}${basis(all)}</div>`;
}

async function send(page, method, path, what) {
  const { data } = page;
  if (data.busy) return false;           // a second press sends nothing a second time
  Object.assign(data, { trouble: null, busy: true });
  try {
    await ask(method, page.data.at + path, { body: what });
    page.reload();
    return true;
  } catch (problem) {
    data.trouble = problem.message;
    page.redraw();
    return false;
  } finally {
    data.busy = false;
  }
}

async function step(page, path, done, name, revision) {
  const reason = await reasonFor({ title: `${sentence(name)}: ${plain(done)}`, text: 'Reason', verb: 'Write it down', needed: true });
  if (reason !== null) send(page, 'POST', path, { step: done, reason, ...(revision ? { revision } : {}) });
}

const button = (words, about, act) => html`<button class="button little" @click=${act}>${words}<span class="spoken"> ${about}</span></button>`;
const list = (items, none) => (items.length === 0 ? html`<p class="muted">${none}</p>` : html`<ul class="bare">${items}</ul>`);

const due = ({ data: { all } }) => html`<section class="panel"><h2>Due</h2>${list([
  ...all.due.map(each => html`<li><strong>${sentence(each.kind)} review of ${each.group}</strong> ${each.because.join(' ')}</li>`),
  ...all.cases_due.map(each => html`<li><strong>Open a case.</strong> ${each.worker} received ${msv(each.usv)} mSv, above the ${each.level} of ${msv(each.level_usv)} mSv.</li>`)], 'Nothing is due.')}</section>`;

const authorisations = page => html`<section class="panel"><h2>Work authorisations</h2>${list(page.data.all.authorisations.map(each => html`<li>
  <h3>${each.code}: ${each.says.group}, ${plain(each.state)}</h3>
  <p>Revision ${each.revision}, ${day(each.says.issued_on)} to ${day(each.says.expires_on)}.${each.says.person_usv === undefined ? '' : ` Planned for ${msv(each.says.person_usv)} person-mSv.`} ${each.because.join(' ')}</p>
  <p class="small">${each.says.conditions.map(area => `${area.area} ${rate(area.usv_per_h)} µSv/h`).join(', ')}. Acknowledged by ${each.acknowledged.length} of ${each.says.crew.length}${each.not_acknowledged.length ? `; not by ${each.not_acknowledged.join(', ')}` : ''}.</p>
  <p>${each.state === 'draft' ? button('Issue', each.code, () => step(page, `/authorisations/${each.code}/steps`, 'issued', each.code, each.revision)) : nothing}
    ${each.state === 'in-force' ? each.not_acknowledged.map(worker => button(`${worker} acknowledges`, each.code, () => send(page, 'POST', `/authorisations/${each.code}/acknowledgements`, { revision: each.revision, worker }))) : nothing}
    ${each.state === 'in-force' ? button('Make void', each.code, () => step(page, `/authorisations/${each.code}/steps`, 'voided', each.code, each.revision)) : nothing}
    ${each.state === 'closed' ? nothing : html`${button('Close', each.code, () => step(page, `/authorisations/${each.code}/steps`, 'closed', each.code, each.revision))}`}</p></li>`), 'None yet.')}
  ${form(page, 'Draft an authorisation', [['group', 'Tasks', page.data.all.groups], ['code', 'Code'], ...ITEMS, ['reason', 'Reason']], filled => {
    const proposal = page.data.proposals.get(filled.group);
    if (!proposal?.stays) return propose(page, filled.group);
    const says = { ...proposal, ...Object.fromEntries(ITEMS.map(([item]) => [item, filled[item]])) };
    const known = page.data.all.authorisations.find(each => each.code === filled.code);
    return send(page, 'PUT', `/authorisations/${encodeURIComponent(filled.code)}`, { revision: (known?.revision ?? 0) + 1, reason: filled.reason, says });
  }, { changed: group => propose(page, group), below: group => stays(page, group) })}</section>`;

/** Fetches what the forecast proposes for some tasks, to be seen before it is sent. */
async function propose(page, group) {
  const { at, proposals } = page.data;
  if (proposals.get(group)?.stays) return false;
  proposals.set(group, {});
  page.redraw();
  try {
    proposals.set(group, (await get(`${at}/authorisations/proposal?group=${encodeURIComponent(group)}`)).body);
  } catch (problem) {
    proposals.set(group, { trouble: problem.message });
  }
  page.redraw();
  return false;
}

function stays(page, group) {
  const proposal = page.data.proposals.get(group);
  if (!proposal) return nothing;
  if (!proposal.stays) return html`<p class="told" role="status">${proposal.trouble ?? 'Reading the proposed stays …'}</p>`;
  if (proposal.stays.length === 0) return html`<p class="told" role="status">No stay is limited or proposed for ${plain(group)}.</p>`;
  return html`<h3>Proposed stays for ${plain(group)}</h3><div class="table" tabindex="0" role="region" aria-label="Proposed stays"><table id="proposed-stays"><thead><tr><th scope="col">Person</th><th scope="col">Area where it is hottest</th><th scope="col" class="n">Longest stay</th></tr></thead>
    <tbody>${proposal.stays.map(each => html`<tr><th scope="row">${each.worker}</th><td>${nameOf(page.camp, 'areas', each.area)}</td><td class="n">${each.hours === undefined ? 'not limited by dose' : `${sig(each.hours)} h`}</td></tr>`)}</tbody></table></div>`;
}

const points = page => html`<section class="panel"><h2>Hold points</h2>${list(page.data.all.hold_points.map(each => html`<li>
  <h3>${each.code}: ${each.state}</h3><p>${each.point.criterion}, ${each.point.where}. Holds ${each.point.group}; released by ${each.point.releases}.</p>
  <p>${each.state === 'holding' ? button('Release', each.code, () => step(page, `/hold-points/${each.code}/steps`, 'released', each.code)) : nothing}
    ${each.state === 'released' ? button('Hold again', each.code, () => step(page, `/hold-points/${each.code}/steps`, 'held', each.code)) : nothing}</p></li>`), 'None yet.')}
  ${form(page, 'Set a hold point', [['group', 'Tasks', page.data.all.groups], ['code', 'Code'], ['criterion', 'Criterion'], ['where', 'Where'], ['releases', 'Who releases it'], ['reason', 'Reason']],
    ({ code, reason, ...point }) => send(page, 'POST', '/hold-points', { code, point, reason }))}</section>`;

const held = page => html`<section class="panel"><h2>Reviews held</h2>${list(page.data.all.reviews.map(each => html`<li>
  <h3>${sentence(each.review.kind)} review, ${each.review.group}</h3><p>${day(each.at.slice(0, 10))}: ${each.review.conclusion} ${each.review.actions} <span class="small">With ${each.review.attended.join(', ')}.</span></p></li>`), 'None yet.')}
  ${form(page, 'Write a review down', [['kind', 'When', ['pre-job', 'in-progress', 'post-job']], ['group', 'Tasks', page.data.all.groups], ['share', 'Reached part of the target, like 0.5 (in progress only)'],
    ['attended', 'Who took part, with commas'], ['conclusion', 'Conclusion'], ['actions', 'Actions']], ({ share, attended, ...review }) => send(page, 'POST', '/reviews', { ...review,
    attended: attended.split(',').map(each => each.trim()).filter(Boolean), ...(share.trim() ? { share: Number(share.replace(',', '.')) } : {}) }))}</section>`;

const cases = page => html`<section class="panel"><h2>Cases</h2>${list(page.data.all.cases.map(each => html`<li>
  <h3>${each.code}: ${each.open ? 'open' : 'closed'}</h3><p>${each.investigation.worker ?? ''} ${msv(each.investigation.usv)} mSv, ${each.investigation.level}. ${each.investigation.cause} ${each.investigation.corrective_action}</p>
  <p>${each.open ? button('Close', each.code, () => step(page, `/cases/${each.code}/steps`, 'closed', each.code)) : nothing}</p></li>`), 'None yet.')}
  ${page.data.all.cases_due.length === 0 ? nothing : form(page, 'Open a case', [['due', 'About', page.data.all.cases_due.map(each => `${each.worker}, ${each.level}`)], ['code', 'Code'], ['cause', 'Cause'], ['corrective_action', 'Corrective action']],
    ({ due: about, code, ...rest }) => send(page, 'POST', '/cases', { code, investigation: { ...page.data.all.cases_due.find(each => `${each.worker}, ${each.level}` === about), ...rest } }))}</section>`;

const basis = all => html`<section class="panel"><h2>What calls for a review</h2><p>${all.chosen ? 'As chosen' : 'As is usual, nobody has chosen yet'}: triggers ${all.settings.preset}, level ${msv(all.settings.level_usv)} mSv, in progress at
  ${all.settings.shares.map(share => `${Math.round(share * 100)} %`).join(', ')} of the target, afterwards when more than ${Math.round(all.settings.deviation * 100)} % off, a case above ${msv(all.settings.investigation_usv)} mSv in a year. ${all.before}</p></section>`;

/**
 * Labels above, nothing wiped unless it was taken.
 *
 * @param tasks where what is chosen as group decides what stands below: changed(group), below(group)
 */
function form(page, name, fields, act, tasks) {
  const id = name.toLowerCase().replace(/ /g, '-');
  const chosen = () => document.getElementById(`${id}-group`)?.value ?? '';
  const submit = async event => {
    event.preventDefault();
    const boxes = event.target;
    if (await act(Object.fromEntries(new FormData(boxes).entries()))) boxes.reset();
  };
  return html`<details class="fold" @toggle=${event => { if (tasks && event.target.open) tasks.changed(chosen()); }}><summary>${name}</summary><form @submit=${submit} novalidate @change=${event => { if (tasks && event.target.name === 'group') tasks.changed(chosen()); }}>${fields.map(([field, words, choices]) => html`<div class="field"><label for=${`${id}-${field}`}>${words}</label>
    ${choices ? html`<select id=${`${id}-${field}`} name=${field}>${choices.map(choice => html`<option value=${choice}>${plain(choice)}</option>`)}</select>`
    : html`<input type="text" id=${`${id}-${field}`} name=${field} autocomplete="off">`}</div>`)}${tasks ? tasks.below(chosen()) : nothing}<div class="doing"><button class="button decide">${name}</button></div></form></details>`;
}
