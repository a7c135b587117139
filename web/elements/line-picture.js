// Lines, bands and dots over one axis: fits, curves over a shift, costs over a setting.
import { d3 } from '../lib/vendor.js';
import { Drawn } from '../lib/draw.js';
import { sig } from '../lib/units.js';

let number = 0;

class LinePicture extends Drawn {
  #key = `lines-${number += 1}`;

  /** data: {title, desc, height?, x: {words, log?}, y: {words, log?, from?}, bands: [{points: [{x, low, high}], kind}], lines: [{points: [{x, y}], kind}], dots: [{x, y, hollow?}], levels: [{y, words}], spots: [{x, y, words}]} */
  draw(data, width) {
    const height = data.height ?? 240;
    const margin = { top: 22, right: 14, bottom: 38, left: 52 };
    const { bands = [], lines = [], dots = [], levels = [], spots = [] } = data;
    const xs = [...bands, ...lines].flatMap(each => each.points.map(point => point.x)).concat(dots.map(dot => dot.x));
    const ys = [...bands.flatMap(each => each.points.flatMap(point => [point.low, point.high])), ...lines.flatMap(each => each.points.map(point => point.y)), ...dots.map(dot => dot.y), ...levels.map(level => level.y)];
    const x = scale(data.x, xs, [margin.left, width - margin.right]);
    const y = scale(data.y, ys, [height - margin.bottom, margin.top]);
    const svg = d3.create('svg').attr('width', width).attr('height', height).attr('role', 'img').attr('aria-labelledby', `${this.#key}-t ${this.#key}-d`);
    svg.append('title').attr('id', `${this.#key}-t`).text(data.title);
    svg.append('desc').attr('id', `${this.#key}-d`).text(data.desc);
    axes(svg, data, x, y, width, height, margin);
    for (const band of bands) {
      svg.append('path').attr('class', `spread ${band.kind ?? ''}`).attr('d', d3.area(point => x(point.x), point => y(point.low), point => y(point.high))(band.points));
    }
    for (const level of levels) {
      svg.append('line').attr('class', 'target-line').attr('x1', margin.left).attr('x2', width - margin.right).attr('y1', y(level.y)).attr('y2', y(level.y));
      svg.append('text').attr('class', 'strong halo').attr('x', width - margin.right).attr('y', y(level.y) - 5).attr('text-anchor', 'end').text(level.words);
    }
    for (const line of lines) svg.append('path').attr('class', `curve ${line.kind ?? ''}`).attr('d', d3.line(point => x(point.x), point => y(point.y))(line.points));
    for (const dot of dots) svg.append('circle').attr('class', dot.hollow ? 'here-dot' : 'end-dot').attr('cx', x(dot.x)).attr('cy', y(dot.y)).attr('r', 4.5);
    for (const spot of spots) {
      svg.append('circle').attr('class', 'here-dot').attr('cx', x(spot.x)).attr('cy', y(spot.y)).attr('r', 5);
      const late = x(spot.x) > width / 2;
      svg.append('text').attr('class', 'strong halo').attr('x', x(spot.x) + (late ? -9 : 9)).attr('y', y(spot.y) - 8).attr('text-anchor', late ? 'end' : 'start').text(spot.words);
    }
    this.replaceChildren(svg.node());
  }
}

function scale({ log, from }, values, range) {
  const [low, high] = [Math.min(...values), Math.max(...values)];
  if (log) return d3.scaleLog([low * 0.92, high * 1.08], range);
  const start = from ?? low;
  return d3.scaleLinear([start, start === high ? start + 1 : high + (high - start) * 0.05], range);
}

function axes(svg, data, x, y, width, height, margin) {
  const grid = svg.append('g').attr('class', 'axis soft');
  for (const tick of ticks(y, 5)) {
    grid.append('line').attr('x1', margin.left).attr('x2', width - margin.right).attr('y1', y(tick)).attr('y2', y(tick));
    grid.append('text').attr('x', margin.left - 6).attr('y', y(tick) + 4).attr('text-anchor', 'end').text(sig(tick, 2));
  }
  svg.append('text').attr('x', 0).attr('y', 11).text(data.y.words);
  const foot = svg.append('g').attr('class', 'axis').attr('transform', `translate(0,${height - margin.bottom})`);
  foot.append('path').attr('d', `M${margin.left} 0H${width - margin.right}`);
  for (const tick of ticks(x, Math.max(2, Math.floor(width / 80)))) {
    foot.append('line').attr('x1', x(tick)).attr('x2', x(tick)).attr('y2', 5);
    foot.append('text').attr('x', x(tick)).attr('y', 18).attr('text-anchor', 'middle').text(sig(tick, 3));
  }
  svg.append('text').attr('x', width - margin.right).attr('y', height - 3).attr('text-anchor', 'end').text(data.x.words);
}

/** A short log axis has few round numbers; then even steps are read better. */
function ticks(scaled, most) {
  const [low, high] = scaled.domain();
  const all = scaled.base ? d3.scaleLinear([low, high], [0, 1]).ticks(most) : scaled.ticks(most);
  const inside = all.filter(tick => tick >= low && tick <= high && (!scaled.base || tick > 0));
  if (!scaled.base || high / low < 4) return inside;
  return [1, 2, 5].flatMap(lead => d3.range(-3, 6).map(power => lead * 10 ** power)).filter(tick => tick >= low && tick <= high).sort((a, b) => a - b);
}

customElements.define('line-picture', LinePicture);
