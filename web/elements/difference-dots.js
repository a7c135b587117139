// The difference of two options, draw by draw: twenty dots on an axis with 0 in it.
import { d3 } from '../lib/vendor.js';
import { Drawn } from '../lib/draw.js';

const R = 4;

class DifferenceDots extends Drawn {
  /** data: {id, outcomes, scaled: value → number shown, words: value → text, a, b, title, desc} */
  draw(data, width) {
    const values = data.outcomes;
    const reach = d3.extent([0, ...values]);
    const same = reach[0] === reach[1];
    const x = d3.scaleLinear(same ? [-1, 1] : reach, [R + 8, width - R - 8]);
    const columns = new Map();
    const dots = values.map(value => {
      const at = Math.round(x(value) / (2 * R)) * 2 * R;
      const height = columns.get(at) ?? 0;
      columns.set(at, height + 1);
      return { value, at, height };
    });
    const tallest = Math.min(20, Math.max(...columns.values()));
    const base = tallest * 2 * R + 8;
    const svg = d3.create('svg').attr('width', width).attr('height', base + 22).attr('role', 'img').attr('aria-labelledby', `${data.id}-t ${data.id}-d`);
    svg.append('title').attr('id', `${data.id}-t`).text(data.title);
    svg.append('desc').attr('id', `${data.id}-d`).text(data.desc);
    svg.append('g').attr('class', 'axis').append('path').attr('d', `M0 ${base}H${width}`);
    svg.append('line').attr('class', 'zero').attr('x1', x(0)).attr('x2', x(0)).attr('y1', 0).attr('y2', base + 6);
    for (const dot of dots) {
      svg.append('circle').attr('class', dot.value < 0 ? 'less' : dot.value > 0 ? 'more' : 'even').attr('cx', dot.at).attr('cy', base - R - 1 - dot.height * 2 * R).attr('r', R - 0.6);
    }
    this.#ends(svg, x, reach, base + 18, data, width);
    this.replaceChildren(svg.node());
  }

  #ends(svg, x, [low, high], y, data, width) {
    const label = (at, text, anchor) => svg.append('text').attr('x', at).attr('y', y).attr('text-anchor', anchor).text(text);
    const zero = x(0);
    label(Math.min(width - 4, Math.max(4, zero)), '0', zero < 12 ? 'start' : zero > width - 12 ? 'end' : 'middle');
    if (low < 0 && zero > 60) label(0, data.words(low), 'start');
    if (high > 0 && zero < width - 60) label(width, data.words(high), 'end');
  }
}

customElements.define('difference-dots', DifferenceDots);
