import { html, svg } from '../lib/vendor.js';

/** What the steps from sand to umber mean. */
export const heatKey = () => html`<p class="heat-key" aria-hidden="true">${['under 5', '5 to 25', '25 to 50', '50 to 100', '100 and more'].map((words, i) => html`
  <span>${svg`<svg><rect class="heat-${i + 1}" x="0.5" y="0.5" width="15" height="11"></rect></svg>`}${words}</span>`)}<span>µSv/h</span></p>`;
