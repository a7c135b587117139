import { html, nothing } from '../lib/vendor.js';
import { link, withQuery } from '../lib/route.js';
import { mayChange } from '../lib/who.js';
import { kinds } from '../forms/kinds.js';

/** "Add …" for a kind of object, with fields filled in already where that is known. */
export function addLink(camp, kind, preset, words) {
  if (!mayChange(kind)) return nothing;
  const address = link(camp.id, 'add', kind);
  return html`<a class="button little" href=${preset ? withQuery(address, preset) : address}>${words ?? `Add ${kinds[kind].article} ${kinds[kind].one}`}</a>`;
}

export const editLink = (camp, kind, object, words) => html`<a href=${link(camp.id, 'edit', kind, object.code)}>${words ?? object.code}</a>`;

/** A short table of all objects of a kind, each leading to its form. */
export function kindPanel(camp, kind, { title, head, row, empty, folded = false }) {
  const objects = camp.doc[kind] ?? [];
  const heading = `${title ?? kinds[kind].title}`;
  const rows = () => html`<div class="table" tabindex="0" role="region" aria-label=${`${heading}, table`}><table>
    <thead><tr>${head.map(cell => th(cell))}</tr></thead>
    <tbody>${objects.map(object => html`<tr>${row(object).map((cell, i) => td(cell, head[i], i))}</tr>`)}</tbody></table></div>`;
  return html`<section class="panel" aria-label=${heading}>
    <div class="head"><h2>${heading}</h2><div class="doing">${addLink(camp, kind)}</div></div>
    ${objects.length === 0 ? html`<p class="muted">${empty}</p>` : folded ? html`<details><summary>Show ${objects.length}</summary>${rows()}</details>` : rows()}</section>`;
}

// A heading that starts with # is of numbers; one with ~ is left out on narrow screens.
const set = head => `${head.includes('#') ? 'n' : ''} ${head.includes('~') ? 'mid-only' : ''}`;
const th = cell => html`<th scope="col" class=${set(cell)}>${cell.replace(/[#~]/g, '')}</th>`;
const td = (cell, head, i) => (i === 0 ? html`<th scope="row">${cell}</th>` : html`<td class=${set(head)}>${cell}</td>`);
