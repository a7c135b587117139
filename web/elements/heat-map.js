// Squares over a platform or a section, from sand to umber by dose rate. Where nothing can be said the square is crossed out.
import { d3 } from '../lib/vendor.js';
import { Drawn } from '../lib/draw.js';
import { digits, heat, rate } from '../lib/units.js';

class HeatMap extends Drawn {
  /** data: {id, columns, rows, cells: [{x, y, usvPerH, extrapolated}], upright, xWords, yWords, title, desc}; rows of cells from low to high */
  draw(data, width) {
    const margin = { top: 8, right: 8, bottom: 34, left: 46 };
    const wide = (width - margin.left - margin.right) / data.columns;
    const [xs, ys] = [d3.extent(data.cells, cell => cell.x), d3.extent(data.cells, cell => cell.y)];
    const perMetre = xs[1] > xs[0] ? ((width - margin.left - margin.right) * (data.columns - 1)) / data.columns / (xs[1] - xs[0]) : 40;
    const natural = data.rows > 1 ? (perMetre * (ys[1] - ys[0])) / (data.rows - 1) : wide;
    const high = Math.min(44, Math.max(14, natural || wide));
    const height = margin.top + data.rows * high + margin.bottom;
    const svg = d3.create('svg').attr('width', width).attr('height', height).attr('role', 'img').attr('aria-labelledby', `${data.id}-t ${data.id}-d`);
    svg.append('title').attr('id', `${data.id}-t`).text(data.title);
    svg.append('desc').attr('id', `${data.id}-d`).text(data.desc);
    data.cells.forEach((cell, i) => {
      const x = margin.left + (i % data.columns) * wide;
      const y = margin.top + (data.rows - 1 - Math.floor(i / data.columns)) * high;
      this.#cell(svg, cell, x, y, wide, high);
    });
    const axis = svg.append('g').attr('class', 'axis');
    const middle = i => margin.left + (i + 0.5) * wide;
    for (const i of few(data.columns, Math.floor(width / 60))) {
      axis.append('text').attr('x', middle(i)).attr('y', height - margin.bottom + 15).attr('text-anchor', 'middle').text(digits(data.cells[i].x, 3));
    }
    for (const i of few(data.rows, Math.floor((data.rows * high) / 18))) {
      axis.append('text').attr('x', margin.left - 6).attr('y', margin.top + (data.rows - 0.5 - i) * high + 4).attr('text-anchor', 'end').text(digits(data.cells[i * data.columns].y, 3));
    }
    svg.append('text').attr('x', width - margin.right).attr('y', height - 4).attr('text-anchor', 'end').text(data.xWords);
    this.replaceChildren(svg.node());
  }

  #cell(svg, cell, x, y, wide, high) {
    const known = cell.usvPerH !== undefined;
    const step = known ? heat(cell.usvPerH) : 0;
    svg.append('rect').attr('class', known ? `cell heat-${step}` : 'cell no-rate').attr('x', x).attr('y', y).attr('width', wide).attr('height', high);
    if (!known) svg.append('path').attr('class', 'crossed').attr('d', `M${x + 2} ${y + high - 2}L${x + wide - 2} ${y + 2}`);
    else if (wide >= 46 && high >= 16) svg.append('text').attr('class', `on-${step}`).attr('x', x + wide / 2).attr('y', y + high / 2 + 4).attr('text-anchor', 'middle').text(`${rate(cell.usvPerH)}${cell.extrapolated ? '*' : ''}`);
    else if (cell.extrapolated) svg.append('circle').attr('class', `mark-on-${step}`).attr('cx', x + wide / 2).attr('cy', y + high / 2).attr('r', 2);
  }
}

/** At most so many of 0 to count − 1, evenly. */
function few(count, most) {
  const every = Math.max(1, Math.ceil(count / Math.max(1, most)));
  return Array.from({ length: Math.ceil(count / every) }, (_, i) => i * every);
}

customElements.define('heat-map', HeatMap);
