// One component with every technique: what each would cost in time, dose and waste, and why the others do not apply.
import { html, nothing } from '../lib/vendor.js';
import { get } from '../lib/api.js';
import { COLUMNS, inOrder } from '../lib/compared.js';
import { link } from '../lib/route.js';
import { nameOf, plural, sentence } from '../lib/words.js';
import { fixed, msv, sig } from '../lib/units.js';
import { missing } from '../elements/missing.js';

let by = 'campaign_person_usv';

export const title = ({ camp, route }) => `Techniques for ${nameOf(camp, 'components', route.rest[0])}, ${camp.doc.settings.name}`;

export async function load({ route, camp }) {
  if (!camp.byCode.components.has(route.rest[0])) throw Object.assign(new Error(`There is no component "${route.rest[0] ?? ''}".`), { status: 404 });
  if (camp.missing) return null;
  return (await get(`/api/campaigns/${encodeURIComponent(camp.id)}/components/${encodeURIComponent(route.rest[0])}/comparison`)).body;
}

export function body({ route, camp, data, redraw }) {
  const name = nameOf(camp, 'components', route.rest[0]);
  const rows = data ? inOrder(data.rows, by) : [];
  const not = data?.rows.filter(row => row.not_applicable) ?? [];
  return html`<div class="lead"><div><p class="crumb"><a href=${link(camp.id, 'cuts')}>Cuts</a></p><h1>${data ? heading(name, data.rows) : `Techniques for ${name}`}</h1>
      <p class="under">${data ? `${plural(rows.length, 'technique')} can do it, ${not.length} cannot. A row is a forecast of the whole campaign with only this component's cuts exchanged.` : ''}</p></div>
      <div class="doing"><a class="button" href=${link(camp.id, 'divide', route.rest[0])}>Divide it</a></div></div>
    <div class="stack">${missing(camp)}
      ${rows.length > 0 ? html`<section class="panel"><h2>${sentence(plural(rows.length, 'technique'))} for ${name}</h2>${table(rows, redraw)}${notes(data)}</section>` : nothing}
      ${not.length > 0 ? html`<section class="panel"><h2>Not applicable</h2><ul class="because">${not.map(row => html`<li><strong>${sentence(row.name)}</strong> ${from(row)}: because ${row.not_applicable}.</li>`)}</ul></section>` : nothing}
    </div>`;
}

export const heading = (name, rows) => {
  const least = inOrder(rows, 'campaign_person_usv')[0];
  return least ? `${name}: ${least.name} takes the least dose for the campaign, ${msv(least.figures.campaign_person_usv)} person-mSv` : `No technique fits ${name}`;
};

const from = row => html`<span class="mark ${row.from === 'campaign' ? 'solid' : ''}">${row.from === 'campaign' ? 'of the campaign' : 'assumption: handbook'}</span>`;

function table(rows, redraw) {
  const priced = rows.some(row => row.figures.cost !== undefined);
  const columns = COLUMNS.filter(([key]) => key !== 'cost' || priced);
  return html`<div class="table" tabindex="0" role="region" aria-label="Techniques compared"><table class="compared"><thead><tr><th scope="col">Technique</th>
      ${columns.map(([key, words]) => html`<th scope="col" class="n" aria-sort=${by === key ? 'ascending' : nothing}><button class="sorter" type="button" @click=${() => { by = key; redraw(); }}>${words}</button></th>`)}</tr></thead>
    <tbody>${rows.map(row => html`<tr class=${row.present ? 'now' : ''} data-technique=${row.technique}><th scope="row">${sentence(row.name)}${row.present ? html` <span class="mark replaced">now</span>` : nothing}
        <span class="sub">${from(row)}${row.routine_from === 'library' ? ' routine of the library' : ''}</span></th>
      ${columns.map(([key, , shown]) => html`<td class="n ${key === 'waste' ? 'waste' : ''}" data-figure=${key}>${key === 'waste' ? waste(row.figures) : key === 'cost' ? cost(row.figures.cost) : row.figures[key] === undefined ? 'not known' : shown(row.figures[key])}${key === 'highest_individual_usv' && row.figures.highest_worker ? html`<span class="sub">${row.figures.highest_worker}</span>` : nothing}</td>`)}</tr>`)}</tbody></table></div>
    ${priced ? nothing : html`<p class="small muted">Cost is not compared here: the campaign has no prices, or the comparison does not carry them.</p>`}`;
}

const waste = figures => html`${sig(figures.kerf_kg)} kg kerf<span class="sub">${[figures.abrasive_kg === undefined ? '' : `${sig(figures.abrasive_kg)} kg abrasive`, figures.drums === undefined ? '' : `${sig(figures.drums, 2)} drums`,
  figures.filters === undefined ? '' : `${sig(figures.filters, 2)} filters`, figures.tool_changes === undefined ? '' : `${sig(figures.tool_changes, 2)} tool changes`].filter(Boolean).join(', ')}</span>`;

const cost = found => (found ? html`${fixed(found.component, 0)} ${found.currency}<span class="sub">${found.not_priced > 0 ? `${found.not_priced} uses not priced` : `prices of ${found.price_year}`}</span>` : 'not known');

const notes = data => html`<ul class="small muted">${[...new Set([...data.rows.flatMap(row => row.notes), ...data.notes])].map(note => html`<li>${note}</li>`)}</ul>`;
