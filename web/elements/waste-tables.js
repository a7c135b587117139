// Secondary waste, packages and cost as tables of the server's figures.
import { html, nothing } from '../lib/vendor.js';
import { lackingPrice, lsaWord, pricedWord } from '../lib/wasting.js';
import { link, withQuery } from '../lib/route.js';
import { nameOf, sentence } from '../lib/words.js';
import { activity, day, fixed, percent, plain, sig } from '../lib/units.js';
import { addLink } from './manage.js';

const SOLIDS = [['kerf_kg', 'Kerf, kg'], ['chips_kg', 'chips'], ['fines_kg', 'fines'], ['airborne_kg', 'airborne'], ['abrasive_kg', 'Abrasive, kg'], ['spent_solids_kg', 'Spent solids, kg'], ['drums', 'Drums'], ['filters', 'Filters'], ['tools', 'Tools']];
const DETAIL = new Set(['chips_kg', 'fines_kg', 'airborne_kg']);
/** Abrasive that nobody lists as unknown is not used at all. */
const lacking = (row, key) => (key === 'abrasive_kg' && row.not_known && !row.not_known.some(line => line.startsWith('abrasive')) ? 'none' : 'not known');
const figure = (row, key) => (row[key] === undefined ? html`<span class="muted">${lacking(row, key)}</span>` : sig(row[key]));
const cells = row => SOLIDS.map(([key]) => html`<td class="n ${DETAIL.has(key) ? 'wide-only' : ''}" data-figure=${key}>${figure(row, key)}</td>`);

export const wasteTable = (camp, { components, totals }) => html`<div class="table" tabindex="0" role="region" aria-label="Secondary waste"><table><thead><tr><th scope="col">Component</th>${SOLIDS.map(([key, words]) => html`<th scope="col" class="n ${DETAIL.has(key) ? 'wide-only' : ''}">${words}</th>`)}<th scope="col" class="n mid-only">Activity in the kerf</th></tr></thead>
    <tbody>${components.map(row => html`<tr><th scope="row">${nameOf(camp, 'components', row.component)}${row.not_known.length + row.assumed.length > 0 ? html`<details class="small"><summary>${row.not_known.length > 0 ? 'not known, assumed' : 'assumed'}</summary><ul>${row.not_known.map(line => html`<li><span class="mark decide">not known</span> ${line}</li>`)}${row.assumed.map(line => html`<li><span class="mark">assumption</span> ${line}</li>`)}</ul></details>` : nothing}</th>
      ${cells(row)}<td class="n mid-only">${row.activity ? html`${activity(row.activity.kerf_becquerel)}<span class="sub">on ${day(row.activity.on)}</span>` : html`<span class="muted">not known</span>`}</td></tr>`)}</tbody>
    <tfoot><tr><th scope="row">Together</th>${cells(totals)}<td class="n mid-only"></td></tr></tfoot></table></div>
  ${totals.incomplete?.length > 0 ? html`<p class="small muted">Sums without what is not known for ${totals.incomplete.map(code => nameOf(camp, 'components', code)).join(', ')}. Drums, filters and tools are expected numbers and need not be whole.</p>` : nothing}`;

export const packageTable = (camp, rows) => html`<div class="table" tabindex="0" role="region" aria-label="Packages"><table class="packages"><thead><tr><th scope="col">Component</th><th scope="col" class="n">Packages</th><th scope="col" class="n mid-only">Content of one, kg</th><th scope="col" class="n mid-only">Full by mass, by volume</th>
      <th scope="col" class="n">µSv/h at the surface, 1 m, 2 m</th><th scope="col">Limit that binds</th><th scope="col" class="n mid-only">Sum of A<sub>2</sub></th><th scope="col" class="wide-only">Class</th><th scope="col" class="n wide-only">Handling one, person-µSv</th></tr></thead>
    <tbody>${rows.map(row => html`<tr data-package=${row.component}><th scope="row">${nameOf(camp, 'components', row.component)}<span class="sub">${row.package_type ? nameOf(camp, 'packages', row.package_type) : html`<a href=${link(camp.id, 'edit', 'components', row.component)}>kind not given<span class="spoken"> for ${nameOf(camp, 'components', row.component)}</span></a>`}</span></th><td class="n">${row.packages}</td>
      <td class="n mid-only">${sig(row.content_kg)}${row.loaded_kg === undefined ? nothing : html`<span class="sub">loaded ${sig(row.loaded_kg)}</span>`}</td>
      <td class="n mid-only">${row.fill_by_mass === undefined ? '' : html`${share(row.fill_by_mass)}, ${share(row.fill_by_volume)}`}</td>
      ${row.around ? around(camp, row.around) : html`<td colspan="2" class="muted">${row.why_no_rates ? sentence(row.why_no_rates) : ''}</td>`}
      ${row.number_of_a2 === undefined ? html`<td class="muted mid-only">${sentence(row.why_not ?? '')}</td><td class="wide-only"></td>`
    : html`<td class="n mid-only" data-figure="number_of_a2">${sig(row.number_of_a2)}<span class="sub">${activity(row.becquerel)}${row.on ? ` on ${day(row.on)}` : ''}</span></td><td class="wide-only">${lsaWord(row.lsa)}<span class="sub">${row.type_a ? 'within Type A' : 'above Type A'}</span></td>`}
      <td class="n wide-only">${row.around ? html`${sig(row.around.handling_usv)}<span class="sub">${sig(row.around.handling_hours)} h</span>` : ''}</td></tr>`)}</tbody></table></div>
  <p class="small muted">Means over the packages of a component, without the kerf, on the day they are packed. Dose rates are calculated with the content spread evenly over the inside; a piece that lies against the wall gives more there: the finished package is measured. The handling dose is what the people of steps counted by packages would take from this package alone, 1 m from it all the while; the forecast's lines rest on the rates of the areas and do not hold it. Class by specific activity alone.
    Where it comes from: ${[['transport_limits', 'limits of dose rates'], ['a1a2', 'A2 values'], ['low_specific_activity', 'classes'], ['nuclides', 'nuclides']].map(([table, words], i) => html`${i > 0 ? ', ' : ''}<a href=${withQuery(link(camp.id, 'handbook'), { table })}>${words}</a>`)}. <a href=${link(camp.id, 'cuts')}>Other packages and shields</a> are tried on Cuts.</p>`;

const share = part => percent(Number(part.toPrecision(2)));

const around = (camp, rates) => html`<td class="n" data-figure="surface_usv_per_h">${sig(rates.surface_usv_per_h)}<span class="sub">${sig(rates.one_metre_usv_per_h)}, ${sig(rates.two_metres_usv_per_h)}</span>${rates.extrapolated ? html`<span class="mark decide">extrapolated</span>` : nothing}</td>
  <td>${rates.non_exclusive ? nothing : html`<span class="mark decide">${rates.exclusive ? 'exclusive use' : 'above the limits'}</span> `}<a href=${withQuery(link(camp.id, 'handbook'), { row: `transport_limits/${rates.binds.limit}` })}>${rates.binds.what}</a>: ${share(rates.binds.share)}<span class="sub">label ${rates.label}, index ${plain(rates.transport_index)}, handled ${rates.handling === 'contact' ? 'by hand' : 'remotely'}</span></td>`;

export function costTables(camp, cost) {
  const money = value => `${fixed(value, 0)} ${cost.currency}`;
  const prices = camp.doc.prices ?? [];
  return html`<div class="grid"><div class="w5"><h3>What it goes into</h3><div class="table" tabindex="0" role="region" aria-label="Cost by heading"><table><tbody>${cost.headings.map(row => html`<tr><th scope="row">${sentence(row.heading)}</th><td class="n">${money(row.amount)}</td></tr>`)}</tbody>
      <tfoot><tr><th scope="row">Together</th><td class="n" data-figure="cost">${money(cost.total)}</td></tr></tfoot></table></div></div>
    <div class="w7"><h3>Not priced</h3>${cost.not_priced.length === 0 ? html`<p class="muted">Everything the plan uses up has a price.</p>` : html`<p class="small muted">What has no price is in no sum. It is not taken to cost nothing.</p><div class="table" tabindex="0" role="region" aria-label="Not priced"><table><tbody>
      ${cost.not_priced.map(row => html`<tr><th scope="row"><a href=${withQuery(link(camp.id, 'add', 'prices'), lackingPrice(row, prices))}>${pricedWord(row)}</a></th><td class="n">${row.quantity === undefined ? 'not known' : `${sig(row.quantity)} ${row.unit}`}</td><td>${row.why}${row.component ? html`<span class="sub">${nameOf(camp, 'components', row.component)}</span>` : nothing}</td></tr>`)}</tbody></table></div>`}</div></div>
    <details class="small"><summary>Every line</summary><div class="table" tabindex="0" role="region" aria-label="Cost lines"><table><thead><tr><th scope="col">Price</th><th scope="col">Component</th><th scope="col" class="n">Quantity</th><th scope="col" class="n">each</th><th scope="col" class="n">Amount</th><th scope="col" class="mid-only">From</th></tr></thead>
      <tbody>${cost.lines.map(row => html`<tr><th scope="row"><a href=${link(camp.id, 'edit', 'prices', row.price)}>${camp.byCode.prices?.get(row.price)?.name ?? row.price}</a>${row.assumed ? html` <span class="mark">assumption</span>` : nothing}</th><td>${row.component ? nameOf(camp, 'components', row.component) : 'campaign'}</td>
        <td class="n">${sig(row.quantity)} ${row.unit}</td><td class="n">${plain(row.each)}</td><td class="n">${fixed(row.amount, 0)}</td><td class="mid-only">${row.from}</td></tr>`)}</tbody></table></div></details>
    <details class="small"><summary>By component</summary><div class="table" tabindex="0" role="region" aria-label="Cost by component"><table><tbody>${cost.components.map(row => html`<tr><th scope="row">${nameOf(camp, 'components', row.component)}</th><td class="n">${money(row.amount)}</td></tr>`)}
      <tr><th scope="row">The campaign itself</th><td class="n">${money(cost.campaign)}</td></tr></tbody></table></div></details>
    <p class="doing">${addLink(camp, 'prices')} <a class="small" href=${link(camp.id, 'basis')}>All prices, to change them</a></p>`;
}

