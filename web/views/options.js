// Which option costs which time, dose, money and waste?
import { html } from '../lib/vendor.js';
import { link } from '../lib/route.js';
import { plural } from '../lib/words.js';

export const title = ({ camp }) => `Options of ${camp.doc.settings.name}`;

export function body({ camp }) {
  const options = camp.doc.options ?? [];
  return html`<div class="lead"><div><h1>${options.length === 0 ? 'No options yet' : plural(options.length, 'option')}</h1></div>
    <div class="doing"><a class="button" href=${link(camp.id, 'add', 'options')}>Add an option</a></div></div>
    <section class="panel"><ul>${options.map(option => html`<li><a href=${link(camp.id, 'edit', 'options', option.code)}>${option.name}</a></li>`)}</ul></section>`;
}
