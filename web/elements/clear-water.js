// How the water clouds over the first shift of cutting, how long people wait, and what a bigger filter would change.
import { html, nothing } from '../lib/vendor.js';
import { day, duration, msv, plain, sig } from '../lib/units.js';
import { figureFrame } from './figure-frame.js';
import './line-picture.js';

export function clearWater(water, name, factor) {
  const { now, other, saved } = water;
  const title = `${duration(now.waiting_hours.likely)} of waiting for clear water at ${name}`;
  const line = run => run.points.map(point => ({ x: point.hour, y: point.gram_per_m3 }));
  const limit = `limit ${water.limit_ntu === undefined ? `${sig(water.limit_gram_per_m3)} g/m³` : `${sig(water.limit_ntu)} NTU = ${sig(water.limit_gram_per_m3)} g/m³`}`;
  const data = {
    title, desc: `Solids in the water over the first shift of ${duration(water.shift_hours)}; highest ${sig(now.peak_gram_per_m3)} g/m³.${other ? ` Dashed: with ${sig(other.filter_m3_per_h)} m³/h.` : ''}`,
    x: { words: 'hours of the shift' }, y: { words: 'g/m³', from: 0 }, lines: [...(other ? [{ points: line(other), kind: 'quiet' }] : []), { points: line(now) }], levels: [{ y: water.limit_gram_per_m3, words: limit }],
  };
  return html`${figureFrame({
    level: 3, title, picture: html`<line-picture .data=${data}></line-picture>`, under: html`<p class="small muted">First shift of cutting.${other ? ` Dashed: a filter of ${sig(other.filter_m3_per_h)} m³/h.` : ''}</p>`,
    caption: 'Solids in the water', head: ['Hour', 'g/m³', 'cutting'], rows: now.points.filter((_, i) => i % Math.ceil(now.points.length / 40) === 0).map(point => [sig(point.hour), sig(point.gram_per_m3), point.cutting ? 'yes' : 'no']),
  })}
  <div class="table" tabindex="0" role="region" aria-label="Filters compared"><table><thead><tr><th scope="col">Filter</th><th scope="col" class="n">turnover</th><th scope="col" class="n">waiting, likely</th><th scope="col" class="n">low to high</th><th scope="col" class="n">highest, g/m³</th><th scope="col" class="n mid-only">caught, kg</th><th scope="col" class="n mid-only">settled, kg</th></tr></thead>
    <tbody>${[now, other].filter(Boolean).map(run => html`<tr><th scope="row">${sig(run.filter_m3_per_h)} m³/h</th><td class="n">${run.turnover_h === undefined ? 'never' : duration(run.turnover_h)}</td><td class="n">${duration(run.waiting_hours.likely)}</td><td class="n">${duration(run.waiting_hours.low)} to ${duration(run.waiting_hours.high)}</td>
      <td class="n">${sig(run.peak_gram_per_m3)}</td><td class="n mid-only">${sig(run.caught_kg)}</td><td class="n mid-only">${sig(run.settled_kg)}</td></tr>`)}</tbody></table></div>
  ${saved ? savings(saved, factor) : nothing}${sizes(water)}`;
}

const savings = (saved, factor) => html`<p>${plain(factor)} times the flow saves ${duration(saved.waiting_hours)} of waiting${saved.task_hours === undefined ? '.' : saved.task_hours === 0 ? '. No step is counted in wait hours, so the plan gains nothing from it yet.'
  : `, ${duration(saved.task_hours)} of work and ${msv(saved.person_usv)} person-mSv; the campaign then ends ${saved.finish_other ? `on ${day(saved.finish_other)} in place of ${day(saved.finish)}` : 'as before'}.`}</p>`;

const sizes = water => html`<details class="small"><summary>Cuts and sizes</summary><ul>${water.cuts.map(cut => html`<li>${cut.count} × ${cut.cut}: ${duration(cut.tool_on_hours_each)} each, then ${duration(cut.waiting_hours.likely)} until clear${cut.assumed ? html` <span class="mark">assumption</span>` : nothing}</li>`)}
  ${water.sizes.map(size => html`<li>${size.name}: settles at ${sig(size.settling_mm_per_s)} mm/s${size.time_constant_h === undefined ? ', never clears' : `, falls to 37 % in ${duration(size.time_constant_h)}`}</li>`)}</ul></details>`;
