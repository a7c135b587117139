// A factor that was accepted in another campaign becomes the beginning here, with the place it was learnt at.
import { html, nothing, render } from '../lib/vendor.js';
import { ask, get } from '../lib/api.js';
import { nameOf, plural, sentence } from '../lib/words.js';
import { day, sig } from '../lib/units.js';

const KIND = { hours: 'hours', speed: 'tool-on time' };
const path = id => `/api/campaigns/${encodeURIComponent(id)}/learnt`;

/** What a factor may be about here: [value, words][]. */
const places = (camp, kind) => (kind === 'hours' ? (camp.forecast?.groups ?? []).map(({ group }) => [group, sentence(group)]) : camp.doc.techniques.map(({ code }) => [code, nameOf(camp, 'techniques', code)]));

/** Resolves with true if one was brought. */
export async function bringFactor(camp) {
  const others = (await get('/api/campaigns?limit=200')).body.items.filter(({ id }) => String(id) !== String(camp.id));
  return new Promise(resolve => {
    const dialog = document.createElement('dialog');
    dialog.setAttribute('aria-labelledby', 'bring-title');
    const state = { source: '', name: '', rows: null, row: null, of: '', reason: '', fault: '', done: false };
    const choose = async id => {
      Object.assign(state, { source: id, rows: null, row: null, of: '', fault: '' });
      draw();
      if (!id) return;
      try {
        const { body } = await get(path(id));
        if (state.source !== id) return;
        Object.assign(state, { name: body.campaign, rows: body.items.filter(each => each.in_force && !each.withdrawn && each.kind !== 'rate') });
      } catch (problem) {
        Object.assign(state, { rows: [], fault: problem.message });
      }
      draw();
    };
    const take = row => {
      state.row = row;
      state.of = places(camp, row.kind).find(([value]) => value === row.of)?.[0] ?? '';
      draw();
    };
    const send = async event => {
      event.preventDefault();
      const { row } = state;
      state.fault = !row ? 'Choose a campaign and one of its factors.' : !state.of ? 'Choose what the factor is about here.' : state.reason.trim() === '' ? 'Say why it holds here too.' : '';
      if (!state.fault) {
        try {
          await ask('POST', path(camp.id), { body: { kind: row.kind, of: state.of, reason: state.reason.trim(), from: { campaign: state.name, on: row.up_to, log_mean: row.log_mean, log_sd: row.log_sd, count: row.count } } });
          state.done = true;
          dialog.close();
          return;
        } catch (problem) {
          state.fault = problem.message;
        }
      }
      draw();
      dialog.querySelector('#bring-fault').focus();
    };
    const draw = () => render(html`<form class="bring" @submit=${send} novalidate>
      <h2 id="bring-title">Bring a factor from another campaign</h2>
      <p>It becomes the beginning here, with its source, and its spread is widened: another campaign is not this one. Dose rates are not brought, since they belong to their site.</p>
      ${state.fault ? html`<p class="message" id="bring-fault" role="alert" tabindex="-1">${state.fault}</p>` : nothing}
      ${others.length === 0 ? html`<p>There is no other campaign here.</p>` : html`
      <div class="field"><label for="bring-source">Campaign</label><select id="bring-source" @change=${event => choose(event.target.value)}><option value="">Choose one</option>${others.map(({ id, name }) => html`<option value=${id}>${name}</option>`)}</select></div>
      ${state.rows === null ? nothing : state.rows.length === 0 ? html`<p>No factor of hours or tool-on time is in force there.</p>` : html`<fieldset><legend>Factor in force there</legend>${state.rows.map(row => html`
        <label class="bring-row"><input type="radio" name="bring" value=${row.number} .checked=${row === state.row} @change=${() => take(row)}> <span>${sentence(row.of)}: ${sig(row.factor, 3)} times the ${KIND[row.kind]}
          <span class="sub">${plural(row.count, 'observation')} up to ${day(row.up_to)}${row.from ? `, first learnt in ${row.from.campaign}` : ''}. ${row.reason} ${row.by}</span></span></label>`)}</fieldset>`}
      ${state.row ? html`<div class="field"><label for="bring-of">Here it is about</label><select id="bring-of" @change=${event => { state.of = event.target.value; }}><option value="" ?selected=${state.of === ''}>Choose one</option>
        ${places(camp, state.row.kind).map(([value, words]) => html`<option value=${value} ?selected=${value === state.of}>${words}</option>`)}</select></div>
        <div class="field"><label for="bring-reason">Reason</label><textarea id="bring-reason" rows="2" maxlength="500" @input=${event => { state.reason = event.target.value; }}></textarea></div>` : nothing}`}
      <div class="doing">${others.length === 0 ? nothing : html`<button class="button decide" id="bring-yes">Bring it here</button>`}<button type="button" class="button" @click=${() => dialog.close()}>Not now</button></div></form>`, dialog);
    draw();
    dialog.addEventListener('close', () => { dialog.remove(); resolve(state.done); });
    document.body.append(dialog);
    dialog.showModal();
  });
}
