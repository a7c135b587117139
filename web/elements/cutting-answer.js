// What some cuts come to with one technique: each figure low, likely, high, with where it comes from.
import { html, nothing } from '../lib/vendor.js';
import { sentence } from '../lib/words.js';
import { digits, duration, plain, shift, sig } from '../lib/units.js';
import { originMark } from './marks.js';

const ROWS = [
  ['speed_mm_per_min', 'Speed of the head', 'mm/min'], ['area_rate_cm2_per_min', 'Cut face', 'cm²/min'], ['strokes_per_hour', 'Strokes', 'a hour'], ['feed_mm_per_min', 'Feed of the drill', 'mm/min'], ['holes', 'Holes', ''],
  ['tool_on_hours', 'With the tool on', 'time'], ['piercing_hours', 'of which piercing', 'time'], ['abrasive_kg', 'Abrasive', 'kg'], ['abrasive_kg_per_m', 'Abrasive for a metre', 'kg/m'], ['water_m3', 'Water', 'm³'],
  ['kerf_kg', 'Metal out of the kerf', 'kg'], ['secondary_waste_kg', 'Secondary waste', 'kg'],
];

export function cuttingAnswer(answer) {
  if (!answer.applicable) {
    return html`<h2>${sentence(answer.name)} is not applicable</h2><p><span class="mark decide">not applicable</span> ${sentence(answer.because)}</p>${limits(answer)}`;
  }
  const { work } = answer;
  const rows = [...ROWS.filter(([name]) => work[name]).map(([name, words, unit]) => ({ words, unit, figure: work[name] })),
    ...work.consumables.map(each => ({ words: `${sentence(each.name)} worn out`, unit: each.unit, figure: each.amount }))];
  return html`<h2>${duration(work.tool_on_hours.value.likely)} with the tool on for ${digits(work.metres, 4)} m</h2>
    <div class="table" tabindex="0" role="region" aria-label="Figures"><table class="answer"><thead><tr><th scope="col">Figure</th><th scope="col" class="n">low</th><th scope="col" class="n">likely</th><th scope="col" class="n">high</th><th scope="col">unit</th><th scope="col">Known</th></tr></thead>
      <tbody>${rows.map(row => html`<tr><th scope="row">${row.words}</th>${['low', 'likely', 'high'].map(part => html`<td class="n">${row.unit === 'time' ? duration(row.figure.value[part]) : sig(row.figure.value[part])}</td>`)}<td>${row.unit === 'time' ? '' : row.unit}</td>
        <td>${originMark(row.figure.origin)}${row.figure.extrapolated ? html` <span class="mark decide">beyond the data</span>` : nothing}</td></tr>`)}</tbody></table></div>
    <details class="small"><summary>Where these come from</summary><ul>${[...new Map(rows.map(row => [row.figure.origin.text, row.figure.origin])).values()].map(origin => html`<li>${originMark(origin)} ${origin.text}</li>`)}</ul></details>
    ${work.jet ? jet(work.jet) : nothing}
    ${work.remarks.length > 0 ? html`<h3>What is not in the figures</h3><ul class="small">${work.remarks.map(remark => html`<li>${remark}</li>`)}</ul>` : nothing}
    ${limits(answer)}`;
}

const range = ({ low, likely, high }, unit, power = 0) => `${sig(shift(likely, power))} ${unit} (${sig(shift(low, power))} to ${sig(shift(high, power))})`;
const jet = state => html`<h3>The jet at its nozzle</h3><dl class="facts">
  <div><dt>Pressure at the pump</dt><dd>${plain(Number(state.pump_pressure_bar.toPrecision(6)))} bar = ${plain(Number(state.pump_pressure_mpa.toPrecision(6)))} MPa</dd></div>
  <div><dt>Pressure at the nozzle</dt><dd>${range(state.nozzle_pressure_mpa, 'bar', 1)}</dd></div><div><dt>Water</dt><dd>${range(state.water_litres_per_min, 'l/min')}</dd></div>
  <div><dt>Hydraulic power</dt><dd>${range(state.hydraulic_power_kw, 'kW')}</dd></div><div><dt>Speed of the jet</dt><dd>${sig(state.jet_metres_per_s)} m/s</dd></div>
  <div><dt>Push back on the head</dt><dd>${range(state.reaction_n, 'N')}</dd></div>${state.hose_fills_l === undefined ? nothing : html`<div><dt>Water in the hose</dt><dd>${sig(state.hose_fills_l)} l</dd></div>`}</dl>`;

const limits = answer => html`<h3>Limits and hazards</h3><ul class="small">${answer.limits.map(line => html`<li>${sentence(line)}</li>`)}</ul>${answer.hazards ? html`<p class="small"><strong>Hazards:</strong> ${answer.hazards}</p>` : nothing}`;
