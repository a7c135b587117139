import { html, nothing } from '../lib/vendor.js';
import { assumed, statusWord } from '../lib/words.js';

/** "assumption" beside every figure that is memory, judgement or invention. */
export const originMark = origin => (assumed(origin.status) ? html`<span class="mark">assumption: ${statusWord(origin.status)}</span>`
  : html`<span class="mark solid">${statusWord(origin.status)}</span>`);

export const originLine = origin => html`<p class="origin">${originMark(origin)} ${origin.text}</p>`;

export const replacedMark = replaced => (replaced ? html`<span class="mark replaced">replaced</span>` : nothing);
