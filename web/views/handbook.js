// The tables that ship: the rows which figures and inputs come from, with their sources in full.
import { html, nothing } from '../lib/vendor.js';
import { get } from '../lib/api.js';
import { shippedRows } from '../elements/shipped-rows.js';
import { subnav } from '../elements/subnav.js';
import { link, withQuery } from '../lib/route.js';
import { plural } from '../lib/words.js';

const MOST = 120;

export const title = ({ camp }) => `Tables, ${camp.doc.settings.name}`;

export async function load({ route }) {
  const [name, ...row] = (route.search.get('row') ?? '').split('/');
  const table = route.search.get('table') ?? (name || 'techniques');
  const [all, one] = await Promise.all([get('/api/tables/shipped'), get(`/api/tables/shipped/${encodeURIComponent(table)}`)]);
  return { all: all.body.tables, one: one.body, row: row.join('/') };
}

export function body({ camp, data: { all, one, row } }) {
  const from = Math.max(0, one.rows.findIndex(each => each.row === row) - MOST / 2);
  const shown = one.rows.length <= MOST ? one.rows : one.rows.slice(from, from + MOST);
  return html`<div class="lead"><div><h1>Tables the defaults come from</h1><p class="under">Each row names its source in full and how it is known. They ship with the service and are not changed here.</p></div></div>
    ${subnav(camp, 'basis', 'handbook')}
    <div class="stack"><nav class="panel" aria-label="Tables that ship"><ul class="shelf">${all.map(each => html`<li><a href=${withQuery(link(camp.id, 'handbook'), { table: each.table })} aria-current=${each.table === one.table ? 'true' : nothing}>${each.title}</a> <span class="muted small">${plural(each.rows, 'row')}</span></li>`)}</ul></nav>
      <section class="panel"><h2>${one.title} <span class="muted small">table ${one.table}, edition ${one.edition}</span></h2>
        ${row && !one.rows.some(each => each.row === row) ? html`<p>The table has no row ${row} now.</p>` : nothing}
        ${shown.length < one.rows.length ? html`<p class="small muted">Rows ${from + 1} to ${from + shown.length} of ${one.rows.length}. <a href=${`/api/tables/shipped/${one.table}`}>All of them</a></p>` : nothing}
        ${shippedRows(shown, { caption: `Table ${one.title}`, sought: row })}</section>
      <p class="small"><a href=${link(camp.id, 'basis')}>The inputs of this campaign</a></p></div>`;
}

export function drawn({ main }) {
  main.querySelector('tr.sought')?.scrollIntoView({ block: 'center' });
}
