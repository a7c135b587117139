// Rows of a shipped table with their sources in full.
import { html, nothing } from '../lib/vendor.js';
import { assumed, sentence, statusWord } from '../lib/words.js';

/** @param sought name of the row to be marked */
export function shippedRows(rows, { caption, sought } = {}) {
  const columns = [...new Set(rows.flatMap(row => row.cells.map(cell => cell.column)))].filter(column => column !== 'status' && column !== 'source' && !column.endsWith('_source'));
  return html`<div class="table" tabindex="0" role="region" aria-label=${caption}><table class="handbook"><thead><tr>${columns.map(column => html`<th scope="col">${sentence(column.replace(/_/g, ' '))}</th>`)}<th scope="col">Known</th><th scope="col">Source in full</th></tr></thead>
    <tbody>${rows.map(row => one(row, columns, row.row === sought))}</tbody></table></div>`;
}

function one(row, columns, sought) {
  const cells = new Map(row.cells.map(cell => [cell.column, cell.text]));
  return html`<tr class=${sought ? 'sought' : ''}>${columns.map((column, i) => (i === 0 ? html`<th scope="row">${cells.get(column)}</th>` : html`<td class=${(cells.get(column) ?? '').length > 40 ? 'long' : ''}>${cells.get(column)}</td>`))}
    <td><span class="mark ${guess(row.status) ? '' : 'solid'}">${guess(row.status) ? 'assumption: ' : ''}${statusWord(row.status)}</span></td>
    <td class="long" data-source>${row.citations.map(each => html`<p class="citation">${each.citation}${each.column === 'source' ? nothing : html` (for ${each.column.replace(/_source$/, '').replace(/_/g, ' ')})`} <span class="muted">[${each.source}, ${each.status}]</span></p>`)}</td></tr>`;
}

const guess = status => assumed(status) || status === 'from memory';
