// The working of a dose rate: background + parts × decay + what is not told apart, so that a person can redo it.
import { html, nothing } from '../lib/vendor.js';
import { partsWorking } from './parts-working.js';
import { nameOf } from '../lib/words.js';
import { day, plain, sig } from '../lib/units.js';

export function rateWorking(camp, rate) {
  if (rate.calculated?.length > 0 || rate.from === 'calculated' || rate.from === 'calibrated') return partsWorking(camp, rate);
  if (rate.survey === undefined) return html`<p class="small">Background only: ${plain(rate.background_usv_per_h)} µSv/h. No source of the campaign reaches this area.</p>`;
  const above = rate.survey_usv_per_h - rate.background_usv_per_h;
  return html`<p class="small">Survey <a href="#/c/${camp.id}/edit/surveys/${rate.survey}">${rate.survey}</a> of ${day(rate.surveyed_on)}: ${sig(rate.survey_usv_per_h, 4)} µSv/h, of which
      ${plain(rate.background_usv_per_h)} background and ${sig(above, 4)} above it. ${rate.past_validity ? html`<span class="mark decide">survey past its validity</span>` : nothing}</p>
    <div class="table" tabindex="0" role="region" aria-label=${`Working of ${rate.id}`}><table><thead><tr><th scope="col">Part</th><th scope="col" class="n">µSv/h at the survey</th><th scope="col" class="n">× decay to ${day(rate.on)}</th><th scope="col" class="n">= µSv/h now</th></tr></thead>
      <tbody><tr><th scope="row">Background</th><td class="n"></td><td class="n"></td><td class="n">${sig(rate.background_usv_per_h, 4)}</td></tr>
        ${rate.parts.map(part => html`<tr><th scope="row">${nameOf(camp, 'sources', part.source)}</th><td class="n">${sig(part.at_survey_usv_per_h, 4)}</td>
          <td class="n">${part.present ? sig(part.decay, 4) : 'gone'}</td><td class="n">${sig(part.usv_per_h, 4)}</td></tr>`)}
        <tr><th scope="row">Not told apart, stays</th><td class="n">${sig(rate.not_told_apart_usv_per_h, 4)}</td><td class="n"></td><td class="n">${sig(rate.not_told_apart_usv_per_h, 4)}</td></tr></tbody>
      <tfoot><tr><th scope="row">Rate</th><td class="n"></td><td class="n"></td><td class="n">${sig(rate.usv_per_h, 4)}</td></tr></tfoot></table></div>`;
}
