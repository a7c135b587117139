// What a plan makes of a component: its outline in proportion, with the lines along which it is cut.
import { html, svg } from '../lib/vendor.js';
import { plain, sig } from '../lib/units.js';
import { sentence } from '../lib/words.js';

const WIDE = 260;
const HIGH = 170;
const EDGE = 6;

export function planSketch(plan, name) {
  return html`<div class="plan-views">${plan.outlines.map((outline, i) => view(plan, outline, `${plan.aim}-${i}`, name))}</div>${asTable(plan, name)}`;
}

const KIND = { axial: 'from top to bottom', circumferential: 'once round', radial: 'from the middle outwards', straight: 'straight across' };

/** The same cuts and pieces in figures. */
const asTable = (plan, name) => html`<details class="small as-table"><summary>Show as a table<span class="spoken">: ${name}, ${plan.words}</span></summary>
  <div class="table" tabindex="0" role="region" aria-label=${`Cuts and pieces of ${name}, ${plan.words}, ${plan.aim}`}><table><thead><tr><th scope="col">What</th><th scope="col" class="n">How many</th><th scope="col" class="n">mm</th><th scope="col" class="n">kg each</th></tr></thead>
    <tbody>${plan.cuts.map(cut => html`<tr><th scope="row">Cut, ${KIND[cut.kind] ?? cut.kind}</th><td class="n">${cut.count}</td><td class="n">${plain(Math.round(cut.length_mm))} through ${plain(Math.round(cut.thickness_mm))}</td><td></td></tr>`)}
      ${plan.pieces.map(piece => html`<tr><th scope="row">Piece</th><td class="n">${piece.count}</td><td class="n">${[piece.size.length_mm, piece.size.width_mm, piece.size.height_mm].map(mm => plain(Math.round(mm))).join(' × ')}</td><td class="n">${sig(piece.mass_kg)}</td></tr>`)}</tbody></table></div></details>`;

function view(plan, outline, key, name) {
  const all = [...outline.edges, ...outline.cut_lines].flatMap(line => line.points);
  const [left, right] = range(all.map(point => point.x_mm));
  const [low, high] = range(all.map(point => point.y_mm));
  const scale = Math.min((WIDE - 2 * EDGE) / Math.max(1, right - left), (HIGH - 2 * EDGE) / Math.max(1, high - low));
  const w = Math.max(8, (right - left) * scale) + 2 * EDGE;
  const h = Math.max(8, (high - low) * scale) + 2 * EDGE;
  const path = line => line.points.map((point, i) => `${i === 0 ? 'M' : 'L'}${(EDGE + (point.x_mm - left) * scale).toFixed(1)} ${(h - EDGE - (point.y_mm - low) * scale).toFixed(1)}`).join('');
  const words = `${sentence(outline.view)}${outline.repeats > 1 ? `, ${outline.repeats} alike` : ''}`;
  return html`<div class="plan-view">${svg`<svg width=${Math.round(w)} height=${Math.round(h)} viewBox="0 0 ${Math.round(w)} ${Math.round(h)}" role="img" aria-labelledby="${key}-t ${key}-d">
      <title id="${key}-t">${name}, ${words}</title>
      <desc id="${key}-d">${plan.words}: ${outline.cut_lines.length} cut lines over ${plain(Math.round(right - left))} mm by ${plain(Math.round(high - low))} mm${outline.all_cuts ? '' : '; not all cuts show from this side'}.</desc>
      <path class="metal" fill-rule="evenodd" d=${outline.edges.map(path).join('')}></path>
      ${outline.cut_lines.map(line => svg`<path class="cut" d=${path(line)}></path>`)}</svg>`}
    <p class="small muted">${words}${outline.all_cuts ? '' : ' (some cuts lie across it)'}</p></div>`;
}

const range = values => [Math.min(...values), Math.max(...values)];
