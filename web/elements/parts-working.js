// The working of a calculated rate: each source as calculated once at its reference day, times what is left of it, times its factor.
import { html, nothing } from '../lib/vendor.js';
import { extrapolatedMark } from './notes.js';
import { sourceName } from './calibration.js';
import { fromWord, stateWord } from '../lib/exposure.js';
import { day, digits, plain, sig } from '../lib/units.js';

export function partsWorking(camp, rate) {
  const parts = [...rate.calculated].sort((a, b) => b.usv_per_h - a.usv_per_h);
  return html`<p class="small">${rate.from === 'calibrated' ? 'Calculated from what stands that day, each source scaled by the factor that fits the surveys best.' : 'Calculated from what stands that day, from the activities as they are stated.'}
      ${rate.extrapolated ? html`${extrapolatedMark()} Good to an order of magnitude at most.` : nothing} ${rate.past_validity ? html`<span class="mark decide">surveys past their validity</span>` : nothing}</p>
    <div class="table" tabindex="0" role="region" aria-label=${`Working of ${rate.id}`}><table><thead><tr><th scope="col">Source</th><th scope="col" class="n">µSv/h of its activity at the reference day</th><th scope="col" class="n">× left on ${day(rate.on)}</th>
        <th scope="col" class="n">× factor</th><th scope="col" class="n">= µSv/h</th></tr></thead>
      <tbody><tr><th scope="row">Background</th><td class="n"></td><td class="n"></td><td class="n"></td><td class="n">${plain(rate.background_usv_per_h)}</td></tr>
        ${parts.map(part => html`<tr><th scope="row">${sourceName(camp, part.source)}<span class="sub">${stateWord(part.state)}; ${sig(part.mean_free_paths)} mean free paths${part.extrapolated ? '; extrapolated' : ''}</span></th>
          <td class="n">${small(part.at_reference_usv_per_h)}<span class="sub">${day(part.reference_on)}</span></td><td class="n">${digits(part.decay, 5)}</td><td class="n">${digits(part.factor, 5)}</td><td class="n">${small(part.usv_per_h)}</td></tr>`)}</tbody>
      <tfoot><tr><th scope="row">Rate, ${fromWord(rate.from)}</th><td class="n"></td><td class="n"></td><td class="n"></td><td class="n">${digits(rate.usv_per_h, 5)}</td></tr></tfoot></table></div>
    <p class="small muted">The rate at the reference day is an integral over the source; it is done once to ${sig(100 * Math.max(0, ...parts.map(part => part.numerical_error)), 2)} % or better and does not change with the date.</p>`;
}

/** What is too weak to be written out is below the last digit. */
const small = value => (value < 1e-6 ? sig(value) : digits(value, 5));
