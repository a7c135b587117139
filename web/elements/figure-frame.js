import { html, nothing } from '../lib/vendor.js';

/** A picture with its finding as title, the picture itself, and the same numbers as a table. */
export function figureFrame({ title, level = 2, tools = nothing, picture, under = nothing, head, rows, caption }) {
  const heading = level === 2 ? html`<h2>${title}</h2>` : html`<h3>${title}</h3>`;
  return html`<figure>
    <figcaption>${heading}${tools}</figcaption>
    ${picture}${under}
    <details class="as-table"><summary>Show as a table<span class="spoken">: ${caption}</span></summary>
      <div class="table" tabindex="0" role="region" aria-label=${`Numbers: ${caption}`}><table><caption>${caption}</caption>
        <thead><tr>${head.map((word, i) => html`<th scope="col" class=${i > 0 ? 'n' : ''}>${word}</th>`)}</tr></thead>
        <tbody>${rows.map(row => html`<tr>${row.map((cell, i) => (i === 0 ? html`<th scope="row">${cell}</th>` : html`<td class="n">${cell}</td>`))}</tr>`)}</tbody>
      </table></div></details>
  </figure>`;
}
