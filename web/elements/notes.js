import { html, nothing } from '../lib/vendor.js';

/** What an answer does not cover, and the mark where the method is stretched beyond its range. */
export function notes(list, extrapolated = false) {
  return html`${extrapolated ? html`<p>${extrapolatedMark()} Beyond the range of the method: good to an order of magnitude at most.</p>` : nothing}
    ${list?.length ? html`<div class="validity"><p class="small label">How far it holds</p><ul class="small muted">${list.map(note => html`<li>${note}</li>`)}</ul></div>` : nothing}`;
}

export const extrapolatedMark = () => html`<span class="mark decide">extrapolated</span>`;
/** Beside a number in a table. */
export const ifExtrapolated = each => (each.extrapolated ? ' (extrapolated)' : '');
