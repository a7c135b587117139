import { html, nothing } from '../lib/vendor.js';
import { link } from '../lib/route.js';

const SETS = {
  cuts: [['cuts', 'Components and cuts'], ['waste', 'Waste, packages, cost'], ['trials', 'Timed trials'], ['calculator', 'Cutting time']],
  tasks: [['tasks', 'Table'], ['bars', 'Bars and resources']],
  basis: [['basis', 'Inputs'], ['library', 'Routine library'], ['handbook', 'Tables'], ['trail', 'Trail']],
};

/** The pages that belong to one tab. */
export const subnav = (camp, tab, page) => html`<nav class="subnav" aria-label=${`Pages of ${tab}`}><ul>
  ${SETS[tab].map(([name, words]) => html`<li><a href=${link(camp.id, name)} aria-current=${name === page ? 'page' : nothing}>${words}</a></li>`)}</ul></nav>`;
