// Bars over time: a row for each group or component, a bar for each of its tasks; a dashed frame where one waited.
import { d3 } from '../lib/vendor.js';
import { Drawn } from '../lib/draw.js';
import { monthTicks } from '../lib/months.js';
import { dayNumber } from '../lib/units.js';

const ROW = 26;

class WorkBars extends Drawn {
  /** data: {rows, from, to, title, desc} */
  draw({ rows, from, to, title, desc }, width) {
    const narrow = width < 560;
    const left = narrow ? 8 : 190;
    const step = narrow ? ROW + 16 : ROW;
    const height = rows.length * step + 26;
    const x = d3.scaleLinear([from, to], [left, width - 8]);
    const svg = d3.create('svg').attr('width', width).attr('height', height).attr('role', 'img').attr('aria-labelledby', 'bars-t bars-d');
    svg.append('title').attr('id', 'bars-t').text(title);
    svg.append('desc').attr('id', 'bars-d').text(desc);
    const axis = svg.append('g').attr('class', 'axis soft');
    for (const tick of monthTicks(from, to, Math.max(2, Math.floor((width - left) / 70)))) {
      axis.append('line').attr('x1', x(tick.day)).attr('x2', x(tick.day)).attr('y1', 18).attr('y2', height);
      axis.append('text').attr('x', Math.min(x(tick.day), width - 44)).attr('y', 12).text(tick.words);
    }
    rows.forEach((row, i) => this.#row(svg.append('g').attr('class', 'bar-row').attr('transform', `translate(0,${24 + i * step})`), row, x, narrow));
    this.replaceChildren(svg.node());
  }

  #row(g, row, x, narrow) {
    const top = narrow ? 16 : 0;
    g.append('text').attr('x', narrow ? 8 : 0).attr('y', narrow ? 11 : 15).text(narrow || row.name.length < 30 ? row.name : `${row.name.slice(0, 28)}…`);
    g.append('line').attr('class', 'month').attr('x1', x(row.from)).attr('x2', x(row.to)).attr('y1', top + 11).attr('y2', top + 11).attr('stroke', 'currentColor').attr('stroke-opacity', 0.25);
    for (const task of row.tasks) {
      const start = dayNumber(task.start);
      g.append('rect').attr('class', `bar-of ${task.critical ? 'critical' : ''}`).attr('x', x(start)).attr('y', top + (task.critical ? 3 : 6))
        .attr('width', Math.max(1.5, x(dayNumber(task.finish) + 1) - x(start) - 0.5)).attr('height', task.critical ? 16 : 10);
      if (task.wait_hours > 0) g.append('rect').attr('class', 'wait').attr('x', x(start) - 1).attr('y', top + 1).attr('width', Math.max(4, x(dayNumber(task.finish) + 1) - x(start) + 1)).attr('height', 20);
    }
  }
}

customElements.define('work-bars', WorkBars);
