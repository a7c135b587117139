// The tables that ship: the rows which figures and inputs come from, with their sources.
import { html, nothing } from '../lib/vendor.js';
import { link } from '../lib/route.js';
import { sentence, statusWord, assumed } from '../lib/words.js';
import { subnav } from '../elements/subnav.js';

const TABLES = [['techniques', 'Techniques', 'technique'], ['difficulty', 'Difficulty factors', 'factor'], ['waste_figures', 'Waste and water', 'figure']];

export const title = ({ camp }) => `Tables, ${camp.doc.settings.name}`;

export const body = ({ camp, tables, route }) => html`<div class="lead"><div><h1>Tables the defaults come from</h1><p class="under">Each row names its source and how it is known. They ship with the service and are not changed here.</p></div></div>
  ${subnav(camp, 'basis', 'handbook')}
  <div class="stack">${TABLES.filter(([name]) => tables[name]).map(([name, words, key]) => html`<section class="panel"><h2>${words}${edition(tables, name)}</h2>${table(tables[name], name, key, route.search.get('row'))}</section>`)}
    <p class="small"><a href=${link(camp.id, 'basis')}>The inputs of this campaign</a></p></div>`;

export function drawn({ main }) {
  const row = main.querySelector('tr.sought');
  row?.scrollIntoView({ block: 'center' });
}

const edition = (tables, name) => {
  const found = tables.editions.find(each => each.table === name);
  return found ? html` <span class="muted small">edition ${found.edition}</span>` : nothing;
};

function table(rows, name, key, sought) {
  const columns = Object.keys(rows[0] ?? {}).filter(column => column !== key && !['status', 'source'].includes(column));
  return html`<div class="table" tabindex="0" role="region" aria-label=${`Table ${name}`}><table class="handbook"><thead><tr><th scope="col">${sentence(key)}</th><th scope="col">Known</th><th scope="col">Source</th>${columns.map(column => html`<th scope="col">${column.replace(/_/g, ' ')}</th>`)}</tr></thead>
    <tbody>${rows.map(row => html`<tr class=${`${name}/${row[key]}` === sought ? 'sought' : ''}><th scope="row">${row[key]}</th><td><span class="mark ${assumed(row.status) ? '' : 'solid'}">${assumed(row.status) ? 'assumption: ' : ''}${statusWord(row.status)}</span></td><td>${row.source}</td>${columns.map(column => html`<td class=${String(row[column]).length > 40 ? 'long' : ''}>${row[column]}</td>`)}</tr>`)}</tbody></table></div>`;
}
