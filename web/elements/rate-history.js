// Dose rate of one area over the days on which work starts there.
import { d3 } from '../lib/vendor.js';
import { Drawn } from '../lib/draw.js';
import { monthTicks } from '../lib/months.js';
import { dayNumber, sig } from '../lib/units.js';

const HEIGHT = 190;

class RateHistory extends Drawn {
  /** data: {history: [{on, usv_per_h}], ceiling, title, desc} */
  draw(data, width) {
    const points = data.history.map(each => ({ day: dayNumber(each.on), rate: each.usv_per_h }));
    const margin = { top: 18, right: 14, bottom: 24, left: 40 };
    const top = Math.max(...points.map(point => point.rate), 0);
    const near = data.ceiling && data.ceiling <= top * 2.5 ? data.ceiling : 0;
    const x = d3.scaleLinear([points[0].day, Math.max(points[0].day + 1, points.at(-1).day)], [margin.left, width - margin.right]);
    const y = d3.scaleLinear([0, Math.max(top, near) * 1.1 || 1], [HEIGHT - margin.bottom, margin.top]);
    const svg = d3.create('svg').attr('width', width).attr('height', HEIGHT).attr('role', 'img').attr('aria-labelledby', 'history-t history-d');
    svg.append('title').attr('id', 'history-t').text(data.title);
    svg.append('desc').attr('id', 'history-d').text(data.desc);
    const scale = svg.append('g').attr('class', 'axis soft');
    for (const tick of y.ticks(4)) {
      scale.append('line').attr('x1', margin.left).attr('x2', width - margin.right).attr('y1', y(tick)).attr('y2', y(tick));
      scale.append('text').attr('x', margin.left - 6).attr('y', y(tick) + 4).attr('text-anchor', 'end').text(sig(tick, 2));
    }
    svg.append('text').attr('x', 0).attr('y', 10).text('µSv/h');
    const axis = svg.append('g').attr('class', 'axis').attr('transform', `translate(0,${HEIGHT - margin.bottom})`);
    axis.append('path').attr('d', `M${margin.left} 0H${width - margin.right}`);
    for (const tick of monthTicks(...x.domain(), Math.max(2, Math.floor(width / 66)))) {
      const g = axis.append('g').attr('transform', `translate(${Math.round(x(tick.day)) + 0.5},0)`);
      g.append('line').attr('y2', 5);
      const late = x(tick.day) > width - 60;
      g.append('text').attr('y', 18).attr('text-anchor', late ? 'end' : 'start').attr('x', late ? 6 : -2).text(tick.words);
    }
    svg.append('path').attr('class', 'curve').attr('d', d3.line(point => x(point.day), point => y(point.rate)).curve(d3.curveStepAfter)(points));
    if (near) {
      svg.append('line').attr('class', 'ceiling-line').attr('x1', margin.left).attr('x2', width - margin.right).attr('y1', y(near)).attr('y2', y(near));
      svg.append('text').attr('class', 'strong halo').attr('x', width - margin.right).attr('y', y(near) - 5).attr('text-anchor', 'end').text(`ceiling ${sig(near)}`);
    } else if (data.ceiling) {
      svg.append('text').attr('class', 'halo').attr('x', width - margin.right).attr('y', 12).attr('text-anchor', 'end').text(`ceiling ${sig(data.ceiling)}, far above`);
    }
    this.replaceChildren(svg.node());
  }
}

customElements.define('rate-history', RateHistory);
