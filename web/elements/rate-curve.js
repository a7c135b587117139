// A dose rate against a length, a level or a day, with a slider that reads off the very points the server worked out.
import { d3 } from '../lib/vendor.js';
import { Drawn } from '../lib/draw.js';
import { rateScale } from '../lib/log-axis.js';

const HEIGHT = 230;

class RateCurve extends Drawn {
  #input;
  #output;
  #here;
  #x;
  #y;

  /** data: {id, points: [{x, usvPerH, extrapolated, words}], xTicks(width): [{x, words}], xLabel, ceiling, ceilingWords, marks: [{x, usvPerH, words}], title, desc, read} */
  draw(data, width) {
    if (!this.#input) this.#build(data);
    this.querySelector('svg')?.remove();
    const margin = { top: 20, right: 14, bottom: 38, left: 58 };
    const [x0, x1] = d3.extent(data.points, point => point.x);
    this.#x = d3.scaleLinear([x0, x1 > x0 ? x1 : x0 + 1], [margin.left, width - margin.right]);
    const bottom = HEIGHT - margin.bottom;
    this.#y = rateScale([...data.points.map(point => point.usvPerH), ...(data.ceiling ? [data.ceiling] : [])], [bottom, margin.top]);
    const svg = d3.create('svg').attr('width', width).attr('height', HEIGHT).attr('role', 'img').attr('aria-labelledby', `${data.id}-t ${data.id}-d`);
    svg.append('title').attr('id', `${data.id}-t`).text(data.title);
    svg.append('desc').attr('id', `${data.id}-d`).text(data.desc);
    this.#axes(svg, data, margin, width, bottom);
    const line = points => d3.line(point => this.#x(point.x), point => this.#y.at(point.usvPerH))(points);
    svg.append('path').attr('class', 'curve').attr('d', line(data.points));
    for (const point of data.points.filter(each => each.extrapolated)) {
      svg.append('circle').attr('class', 'stretched').attr('cx', this.#x(point.x)).attr('cy', this.#y.at(point.usvPerH)).attr('r', 3.5);
    }
    if (data.ceiling) this.#ceiling(svg, data, margin, width);
    for (const mark of data.marks ?? []) this.#mark(svg, mark, width, bottom);
    this.#here = svg.append('g').attr('aria-hidden', 'true');
    this.#here.append('line').attr('class', 'here').attr('y1', margin.top).attr('y2', bottom);
    this.#here.append('circle').attr('class', 'here-dot').attr('r', 4.5);
    this.prepend(svg.node());
    this.#input.max = data.points.length - 1;
    if (this.#input.dataset.of !== data.desc) {
      this.#input.dataset.of = data.desc;
      this.#input.value = data.read ?? data.points.length - 1;
    }
    this.#read();
  }

  #build(data) {
    const reader = document.createElement('div');
    reader.className = 'reader curve-reader';
    this.#input = Object.assign(document.createElement('input'), { type: 'range', id: `${data.id}-read`, min: 0 });
    this.#input.setAttribute('aria-label', data.xLabel);
    this.#output = document.createElement('output');
    this.#output.htmlFor = this.#input.id;
    this.#input.addEventListener('input', () => this.#read());
    reader.append(this.#input, this.#output);
    this.append(reader);
  }

  #axes(svg, data, margin, width, bottom) {
    const scale = svg.append('g').attr('class', 'axis soft');
    for (const tick of this.#y.ticks) {
      const y = this.#y.at(tick.value);
      scale.append('line').attr('x1', margin.left).attr('x2', width - margin.right).attr('y1', y).attr('y2', y);
      scale.append('text').attr('x', margin.left - 6).attr('y', y + 4).attr('text-anchor', 'end').text(tick.words);
    }
    svg.append('text').attr('x', 0).attr('y', 10).text(this.#y.log ? 'per hour' : 'µSv/h');
    const axis = svg.append('g').attr('class', 'axis').attr('transform', `translate(0,${bottom})`);
    axis.append('path').attr('d', `M${margin.left} 0H${width - margin.right}`);
    for (const tick of data.xTicks(Math.max(2, Math.floor((width - 80) / 105)), this.#x.domain())) {
      const g = axis.append('g').attr('transform', `translate(${Math.round(this.#x(tick.x)) + 0.5},0)`);
      g.append('line').attr('y2', 5);
      g.append('text').attr('y', 17).attr('text-anchor', this.#x(tick.x) > width - 30 ? 'end' : 'middle').text(tick.words);
    }
    svg.append('text').attr('x', width - margin.right).attr('y', HEIGHT - 4).attr('text-anchor', 'end').text(data.xLabel);
  }

  #ceiling(svg, data, margin, width) {
    const y = this.#y.at(data.ceiling);
    svg.append('line').attr('class', 'ceiling-line').attr('x1', margin.left).attr('x2', width - margin.right).attr('y1', y).attr('y2', y);
    svg.append('text').attr('class', 'strong halo').attr('x', width - margin.right).attr('y', y - 5).attr('text-anchor', 'end').text(data.ceilingWords);
  }

  #mark(svg, mark, width, bottom) {
    const [x, y] = [this.#x(mark.x), this.#y.at(mark.usvPerH)];
    svg.append('path').attr('class', 'found').attr('d', `M${x} ${y - 6}l6 6l-6 6l-6 -6z`);
    svg.append('line').attr('class', 'drop').attr('x1', x).attr('x2', x).attr('y1', y + 6).attr('y2', bottom);
    const left = x > width / 2;
    svg.append('text').attr('class', 'strong halo').attr('x', x + (left ? -6 : 6)).attr('y', bottom - 6).attr('text-anchor', left ? 'end' : 'start').text(mark.words);
  }

  #read() {
    const point = this.data.points[Number(this.#input.value)];
    this.#here.attr('transform', `translate(${this.#x(point.x)},0)`);
    this.#here.select('circle').attr('cy', this.#y.at(point.usvPerH));
    this.#output.value = point.words;
    this.#input.setAttribute('aria-valuetext', point.words);
  }
}

customElements.define('rate-curve', RateCurve);

/** Ticks of a number axis. */
export const numberTicks = words => (count, domain) => d3.ticks(...domain, count).map(x => ({ x, words: words(x) }));
