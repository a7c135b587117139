// What a figure rests on: each input with its writer's source, and the row of the shipped table behind it.
import { html, nothing } from '../lib/vendor.js';
import { originMark } from './marks.js';
import { shippedRows } from './shipped-rows.js';
import { figureOf, rowAt, writtenAt } from '../lib/inputs.js';
import { plural } from '../lib/words.js';

const OPEN = 4;

export function restsOn(camp, { inputs, rows }, ids) {
  const found = ids.map(id => inputs.find(input => input.id === id)).filter(Boolean);
  if (found.length === 0) return html`<section class="panel" id="rests"><h2>What the figure rests on</h2><p>The plan has no such input now: it was changed since.</p></section>`;
  return html`<section class="panel rests" id="rests" tabindex="-1"><h2>${found.length === 1 ? `${found[0].name}: where it comes from` : `The figure rests on ${plural(found.length, 'input')}`}</h2>
    ${found.map(input => html`<details class="rest" data-input=${input.id} ?open=${found.length <= OPEN}><summary>${input.name}${input.value ? html`: ${figureOf(input)}` : nothing}</summary>${one(camp, input, rows)}</details>`)}</section>`;
}

function one(camp, input, rows) {
  const tables = grouped(input.rows);
  return html`<p class="origin">${input.status ? originMark(input) : html`<span class="mark solid">stated in the plan</span>`} ${input.source} <a href=${writtenAt(camp, input)}>Where it is written<span class="spoken">: ${input.name}</span></a></p>
    ${input.rows.length === 0 ? html`<p class="small" data-own>No table is behind it: the trace ends at these words of whoever wrote the plan.</p>` : nothing}
    ${[...tables].map(([table, named]) => {
    const here = rows.filter(row => row.table === table && named.some(each => each.row === row.row));
    return html`<p class="small">From the table ${table}, edition ${here[0]?.edition}: ${named.map((row, i) => html`${i > 0 ? ', ' : ''}<a href=${rowAt(camp, row)} data-row>row ${row.row}<span class="spoken"> of ${table}, for ${input.name}</span></a>`)}</p>
      ${shippedRows(here, { caption: `Rows of ${table} behind ${input.name}` })}`;
  })}`;
}

function grouped(rows) {
  const tables = new Map();
  for (const row of rows) tables.set(row.table, [...(tables.get(row.table) ?? []), row]);
  return tables;
}
