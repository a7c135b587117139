// A small calculator: one source behind layers at a point on a day.
import { html, nothing } from '../lib/vendor.js';
import { asked } from '../elements/ask-panel.js';
import { Asking } from '../lib/exposure.js';
import { link } from '../lib/route.js';
import { oneRate } from '../questions/one-rate.js';
import '../elements/dot-rows.js';

let session;

export const title = () => 'One dose rate';

export function body({ camp, tables, redraw }) {
  session ??= new Asking({ fields: oneRate.fields, value: oneRate.start(), etag: null, address: '/api/dose-rate', method: 'POST' });
  return html`<div class="lead"><div>${camp ? html`<p class="crumb"><a href=${link(camp.id, 'areas')}>Areas</a></p>` : nothing}<h1>Work out one dose rate</h1>
      <p class="under">Gamma rays of one source through layers of matter. The figures that stand here are an example; nothing is kept.</p></div></div>
    <section class="panel ask" aria-label="One dose rate">${asked({ camp: null, tables, redraw, question: oneRate, session, level: 2 })}</section>`;
}
