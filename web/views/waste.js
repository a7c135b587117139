// What the work leaves behind, what it goes into, what it costs, and how clear the water stays.
import { html, nothing } from '../lib/vendor.js';
import { get } from '../lib/api.js';
import { typed } from '../lib/typed.js';
import { link } from '../lib/route.js';
import { nameOf, sentence } from '../lib/words.js';
import { fixed, sig } from '../lib/units.js';
import { clearWater } from '../elements/clear-water.js';
import { addLink } from '../elements/manage.js';
import { missing } from '../elements/missing.js';
import { subnav } from '../elements/subnav.js';
import { costTables, packageTable, wasteTable } from '../elements/waste-tables.js';

export const title = ({ camp }) => `Waste, packages and cost, ${camp.doc.settings.name}`;

export async function load({ camp }) {
  const cut = camp.doc.components.filter(component => camp.doc.cuts.some(each => each.component === component.code)).map(component => component.code);
  const most = [...camp.forecast?.waste.components ?? []].sort((a, b) => b.spent_solids_kg - a.spent_solids_kg)[0]?.component;
  const first = cut.includes(most) ? most : cut[0];
  const state = { component: first ?? '', factor: '2', answer: null, faults: [] };
  if (camp.doc.settings.pool?.water && first) await ask(camp, state);
  return state;
}

async function ask(camp, state) {
  const factor = typed(state.factor);
  state.faults = [];
  if (factor.value === undefined) {
    state.faults = [{ field: 'factor', detail: factor.blank ? 'Give how many times the flow.' : `The factor ${factor.fault}` }];
    return;
  }
  try {
    state.answer = (await get(`/api/campaigns/${encodeURIComponent(camp.id)}/water?component=${encodeURIComponent(state.component)}&factor=${factor.value}`)).body;
    state.shown = { name: nameOf(camp, 'components', state.component), factor: factor.value };
  } catch (problem) {
    state.answer = null;
    state.faults = problem.errors?.length > 0 ? problem.errors : [{ field: '', detail: problem.message }];
  }
}

export function body({ camp, data, redraw }) {
  const { forecast } = camp;
  return html`<div class="lead"><div><h1>${forecast ? heading(forecast) : 'Waste, packages and cost'}</h1>
      <p class="under">${forecast?.cost ? `${fixed(forecast.cost.total, 0)} ${forecast.cost.currency} in prices of ${forecast.cost.price_year}${forecast.cost.not_priced.length > 0 ? ', without what is not priced' : ''}.` : 'No prices yet.'}</p></div></div>
    ${subnav(camp, 'cuts', 'waste')}
    <div class="stack">${missing(camp)}
      ${forecast ? html`<section class="panel"><h2>Secondary waste of each component</h2>${forecast.waste.components.length > 0 ? wasteTable(camp, forecast.waste) : html`<p class="muted">No components yet.</p>`}</section>
      <section class="panel"><h2>What the packages hold</h2>${packageTable(camp, forecast.packages)}</section>
      <section class="panel stack"><h2>Cost</h2>${forecast.cost ? costTables(camp, forecast.cost) : html`<p class="muted">No prices yet: add what an hour, a package or a kg of abrasive costs, in one currency and price year.</p><p>${addLink(camp, 'prices', null, 'Add the first price')}</p>`}</section>` : nothing}
      <section class="panel stack"><h2>Clear water</h2>${camp.doc.settings.pool?.water ? water(camp, data, redraw) : html`<p class="muted">How long people wait for clear water follows from the filter, what clouds the water and what each technique sets free. None of it is given yet.</p><p><a class="button little" href=${link(camp.id, 'settings')}>Describe the water in the settings</a></p>`}</section>
    </div>`;
}

const heading = ({ waste }) => `${sig(waste.totals.spent_solids_kg)} kg of kerf and abrasive, ${waste.totals.packages} packages${waste.totals.drums === undefined ? '' : `, about ${sig(waste.totals.drums, 2)} drums`}`;

function water(camp, state, redraw) {
  const anew = async event => {
    event?.preventDefault();
    await ask(camp, state);
    redraw();
  };
  const fault = state.faults.find(each => each.field === 'factor');
  const rest = state.faults.filter(each => each !== fault);
  return html`<form class="tools" novalidate aria-label="Clear water" @submit=${anew}>
      <div class="field"><label for="water-component">Component</label><div class="entry"><select id="water-component" class="auto" @change=${event => { state.component = event.target.value; anew(); }}>${camp.doc.components.map(each => html`<option value=${each.code} ?selected=${state.component === each.code}>${each.name}</option>`)}</select></div></div>
      <div class="field ${fault ? 'bad' : ''}"><label for="water-factor">Compare with so many times the flow</label>${fault ? html`<p class="message" id="water-factor-fault">${sentence(fault.detail)}</p>` : nothing}
        <div class="entry"><input id="water-factor" class="short" type="text" inputmode="decimal" autocomplete="off" aria-invalid=${fault ? 'true' : nothing} aria-describedby=${fault ? 'water-factor-fault' : nothing} .value=${state.factor} @input=${event => { state.factor = event.target.value; }}></div></div>
      <button class="button" type="submit">Compare</button></form>
    ${rest.length > 0 ? html`<ul class="message" role="alert">${rest.map(each => html`<li>${sentence(each.detail)}${each.field.startsWith('settings') ? html` <a href=${link(camp.id, 'settings')}>Open the settings</a>` : nothing}</li>`)}</ul>` : nothing}
    ${state.answer ? clearWater(state.answer, state.shown.name, state.shown.factor) : nothing}`;
}
