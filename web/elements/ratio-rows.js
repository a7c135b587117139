// One row for each thing, on one axis by factors: dots for what was found, a line for the range it was thought to be in.
import { d3 } from '../lib/vendor.js';
import { Drawn } from '../lib/draw.js';
import { sig } from '../lib/units.js';

const ROW = 28;
const TOP = 20;
const STEPS = [1, 1.5, 2, 3, 5, 7];
let number = 0;

class RatioRows extends Drawn {
  #key = `ratios-${number += 1}`;

  /** data: {title, desc, words, one?, rows: [{name, mark, dots: [{x, hollow}], low?, high?}]}; mark is a word beside the name, one draws a line at 1 */
  draw({ title, desc, words, one, rows }, width) {
    const all = rows.flatMap(row => [...row.dots.map(dot => dot.x), ...(row.low > 0 ? [row.low, row.high] : [])]).concat(one ? [0.8, 1.25] : []).filter(x => x > 0);
    const height = TOP + rows.length * ROW + 34;
    const x = d3.scaleLog([Math.min(...all) * 0.93, Math.max(...all) * 1.07], [8, width - 8]).clamp(true);
    const svg = d3.create('svg').attr('width', width).attr('height', height).attr('role', 'img').attr('aria-labelledby', `${this.#key}-t ${this.#key}-d`);
    svg.append('title').attr('id', `${this.#key}-t`).text(title);
    svg.append('desc').attr('id', `${this.#key}-d`).text(desc);
    const bottom = TOP + rows.length * ROW;
    const axis = svg.append('g').attr('class', 'axis soft');
    for (const tick of round(x, Math.max(2, Math.floor(width / 70)))) {
      axis.append('line').attr('x1', x(tick)).attr('x2', x(tick)).attr('y1', TOP - 6).attr('y2', bottom);
      axis.append('text').attr('x', x(tick)).attr('y', bottom + 15).attr('text-anchor', x(tick) < 20 ? 'start' : x(tick) > width - 20 ? 'end' : 'middle').text(sig(tick, 2));
    }
    svg.append('text').attr('x', width).attr('y', bottom + 31).attr('text-anchor', 'end').text(words);
    if (one) svg.append('line').attr('class', 'target-line').attr('x1', x(1)).attr('x2', x(1)).attr('y1', TOP - 6).attr('y2', bottom);
    rows.forEach((row, i) => {
      const y = TOP + i * ROW + 20;
      svg.append('text').attr('class', 'halo').attr('x', 0).attr('y', y - 11).text(short(row.name + (row.mark ? ` · ${row.mark}` : ''), width));
      if (row.low > 0) svg.append('line').attr('class', 'range').attr('x1', x(row.low)).attr('x2', x(row.high)).attr('y1', y).attr('y2', y);
      else svg.append('line').attr('class', 'leader').attr('x1', x(d3.min(row.dots, dot => dot.x))).attr('x2', x(d3.max(row.dots, dot => dot.x))).attr('y1', y).attr('y2', y);
      for (const dot of row.dots) svg.append('circle').attr('class', dot.hollow ? 'here-dot' : 'found-dot').attr('cx', x(dot.x)).attr('cy', y).attr('r', 4.5);
    });
    this.replaceChildren(svg.node());
  }
}

/** Round numbers on a log axis, not more than fit. */
function round(x, most) {
  const [low, high] = x.domain();
  const all = d3.range(-3, 8).flatMap(power => STEPS.flatMap(step => [step * 10 ** power])).concat(0.8, 1.2).filter(tick => tick >= low && tick <= high).sort((a, b) => a - b);
  if (all.length <= most) return all;
  const tens = all.filter(tick => Number.isInteger(Math.log10(tick) + 1e-12) || Math.abs(Math.log10(tick) - Math.round(Math.log10(tick))) < 1e-9);
  const every = Math.ceil(all.length / most);
  return tens.length >= 3 ? tens : all.filter((_, i) => i % every === 0);
}

const short = (text, width) => (text.length * 6.2 > width ? `${text.slice(0, Math.max(8, Math.floor(width / 6.2) - 1))}…` : text);

customElements.define('ratio-rows', RatioRows);
