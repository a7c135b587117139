// One way of dividing a component: what it costs, what bounds it, whether anything got lost.
import { html, nothing } from '../lib/vendor.js';
import { planSketch } from './plan-sketch.js';
import { plural, sentence } from '../lib/words.js';
import { activity, digits, duration, percent, plain, rate, sig } from '../lib/units.js';

const AIM = { 'fewest-cut-metres': 'Fewest cut metres', 'fewest-packages': 'Fewest packages', 'lightest-lift': 'Lightest lift', 'by-hand': 'Your own division' };
const BOUND = { payload: 'the mass a package may hold', room: 'the room in a package', 'package-size': 'the size of the package', hoist: 'the hoist', activity: 'the activity of a package',
  'dose-rate': 'the dose rate at its surface', 'piece-size': 'the largest piece', 'piece-count': 'the number of pieces', kerf: 'the kerf', volume: 'the volume of a package', pieces: 'the pieces: nothing else would fit less' };
export const aimWord = aim => AIM[aim] ?? sentence(aim.replace(/-/g, ' '));
const bound = code => BOUND[code] ?? code.replace(/-/g, ' ');
const part = value => percent(Number(value.toPrecision(2)));

export const planCard = (plan, name, take) => html`<article class="plan" aria-label=${`${aimWord(plan.aim)}: ${plan.words}`}>
  <h3>${aimWord(plan.aim)}</h3><p class="words">${sentence(plan.words)}</p>
  ${planSketch(plan, name)}
  <dl class="facts">
    <div><dt>Cut</dt><dd data-figure="metres">${digits(plan.cut_metres, 4)} m</dd></div><div><dt>Cuts</dt><dd>${plan.cut_count}</dd></div>
    <div><dt>Pieces</dt><dd data-figure="pieces">${plan.piece_count}</dd></div><div><dt>Packages</dt><dd data-figure="packages">${plan.packages ?? 'do not go in'}</dd></div>
    <div><dt>Heaviest piece</dt><dd>${sig(plan.heaviest_kg)} kg</dd></div><div><dt>Thickest cut</dt><dd>${sig(plan.thickest_mm)} mm</dd></div>
    ${plan.tool_on_hours ? html`<div><dt>With the tool on</dt><dd>${duration(plan.tool_on_hours.likely)}<span class="sub">${duration(plan.tool_on_hours.low)} to ${duration(plan.tool_on_hours.high)}</span></dd></div>` : nothing}
    ${plan.surface_usv_per_h === undefined ? nothing : html`<div><dt>At the package surface</dt><dd>${rate(plan.surface_usv_per_h)} µSv/h</dd></div>`}</dl>
  ${plan.packed ? packed(plan.packed) : nothing}
  ${plan.not_applicable ? html`<p class="small"><span class="mark decide">cannot be cut so</span> because ${plan.not_applicable}</p>` : nothing}
  ${plan.exceeded.length > 0 ? html`<ul class="small exceeded">${plan.exceeded.map(each => html`<li><span class="mark decide">beyond ${bound(each.bound)}</span> ${sentence(each.text)}.</li>`)}</ul>` : nothing}
  ${plan.not_coarser.length > 0 ? html`<details class="small"><summary>Why not coarser</summary><ul>${plan.not_coarser.map(each => html`<li>${sentence(words(each.division))}: ${each.text}.</li>`)}</ul></details>` : nothing}
  ${details(plan)}
  ${take}</article>`;

const words = division => (typeof division === 'string' ? division : Object.values(division).join(' '));

const packed = ({ loads, binds, least, heuristic }) => html`<p class="small">${loads.map((load, i) => html`${i > 0 ? '; ' : ''}${plural(load.packages, 'package')} with ${plural(load.pieces, 'piece')}, ${sig(load.mass_kg)} kg: ${part(load.fill_by_mass)} full by mass, ${part(load.fill_by_volume)} by volume`)}.</p>
  <p class="small">What binds: <strong>${bound(binds)}</strong>.${heuristic ? ` No division needs fewer than ${least}; the packing is a good one, not proven the best.` : ''}</p>`;

function details({ conservation, pieces, cuts }) {
  return html`<details class="small"><summary>Cuts, pieces, and what is conserved</summary>
    <ul>${cuts.map(cut => html`<li>${cut.count} × ${cut.kind}: ${sig(cut.length_mm)} mm long, ${sig(cut.thickness_mm)} mm thick</li>`)}</ul>
    <ul>${pieces.map(piece => html`<li>${plural(piece.count, 'piece')} of ${sig(piece.mass_kg)} kg, ${[piece.size.length_mm, piece.size.width_mm, piece.size.height_mm].map(mm => sig(mm)).join(' × ')} mm</li>`)}</ul>
    <div class="table" tabindex="0" role="region" aria-label="Conservation"><table><thead><tr><th scope="col"></th><th scope="col" class="n">Component</th><th scope="col" class="n">Pieces</th><th scope="col" class="n">Kerf</th><th scope="col" class="n">Left over</th></tr></thead>
      <tbody><tr><th scope="row">Mass, kg</th><td class="n">${digits(conservation.component_kg, 6)}</td><td class="n">${digits(conservation.pieces_kg, 6)}</td><td class="n">${digits(conservation.kerf_kg, 4)}</td><td class="n">${nought(conservation.difference_kg, conservation.component_kg)}</td></tr>
        ${conservation.nuclides.map(each => html`<tr><th scope="row">${each.nuclide}</th><td class="n">${activity(each.component_bq)}</td><td class="n">${activity(each.pieces_bq)}</td><td class="n">${activity(each.kerf_bq)}</td><td class="n">${nought(each.difference_bq, each.component_bq)}</td></tr>`)}</tbody></table></div></details>`;
}

/** Rounding of the machine is nothing lost. */
const nought = (difference, whole) => (Math.abs(difference) <= 1e-9 * Math.abs(whole) ? '0' : plain(difference));
