// Twenty outcomes as they are kept, and under them twenty with what stands in a form, on one axis.
import { d3 } from '../lib/vendor.js';
import { Drawn } from '../lib/draw.js';
import { dots } from '../lib/dots.js';
import { msv, msvTyped } from '../lib/units.js';

const R = 5;
const ROW = 64;

class TryDots extends Drawn {
  /** data: {rows: [{name, outcomes, hollow}], targetUsv, title, desc} */
  draw(data, width) {
    const values = data.rows.flatMap(row => row.outcomes);
    const low = Math.min(...values);
    const high = Math.max(...values);
    const span = high - low || 1;
    const near = data.targetUsv !== undefined && data.targetUsv > low - span / 2 && data.targetUsv < high + span / 2;
    const reach = near ? [Math.min(low, data.targetUsv), Math.max(high, data.targetUsv)] : [low, high];
    const x = d3.scaleLinear(reach[0] === reach[1] ? [reach[0] - 1, reach[1] + 1] : reach, [R + 10, width - R - 10]);
    const bottom = data.rows.length * ROW + 4;
    const svg = d3.create('svg').attr('width', width).attr('height', bottom + 24).attr('role', 'img').attr('aria-labelledby', 'try-t try-d');
    svg.append('title').attr('id', 'try-t').text(data.title);
    svg.append('desc').attr('id', 'try-d').text(data.desc);
    if (near) svg.append('line').attr('class', 'target-line').attr('x1', x(data.targetUsv)).attr('x2', x(data.targetUsv)).attr('y1', 0).attr('y2', bottom);
    const bin = Math.abs(x.invert(2 * R + 1) - x.invert(0));
    data.rows.forEach((row, i) => this.#row(svg, row, (i + 1) * ROW - 4, { x, bin, width, targetUsv: data.targetUsv }));
    const axis = svg.append('g').attr('class', 'axis');
    axis.append('path').attr('d', `M0 ${bottom}H${width}`);
    x.ticks(Math.max(2, Math.floor(width / 90))).forEach(tick => {
      axis.append('line').attr('x1', x(tick)).attr('x2', x(tick)).attr('y1', bottom).attr('y2', bottom + 4);
      axis.append('text').attr('x', x(tick)).attr('y', bottom + 18).attr('text-anchor', x(tick) > width - 40 ? 'end' : x(tick) < 40 ? 'start' : 'middle').text(msv(tick));
    });
    if (near) svg.append('text').attr('class', 'strong halo').attr('x', x(data.targetUsv) + (x(data.targetUsv) > width / 2 ? -6 : 6)).attr('y', 12)
      .attr('text-anchor', x(data.targetUsv) > width / 2 ? 'end' : 'start').text(`target ${msvTyped(data.targetUsv)} person-mSv`);
    this.replaceChildren(svg.node());
  }

  #row(svg, row, base, { x, bin, targetUsv }) {
    const group = svg.append('g').attr('class', 'dots').attr('data-row', row.name);
    const placed = dots(row.outcomes, bin, targetUsv ?? 0, targetUsv);
    const step = Math.min(2 * R, (ROW - 22) / Math.max(1, ...placed.map(dot => dot.place)));
    for (const dot of placed) {
      const cx = x(dot.at);
      const cy = base - R - dot.place * step;
      if (dot.above) group.append('path').attr('class', `outcome above ${row.hollow ? 'hollow' : ''}`).attr('d', `M${cx} ${cy - R}l${R} ${R}l${-R} ${R}l${-R} ${-R}z`);
      else group.append('circle').attr('class', `outcome ${row.hollow ? 'hollow' : ''}`).attr('cx', cx).attr('cy', cy).attr('r', R - 0.75);
    }
    group.append('text').attr('class', 'halo').attr('x', 2).attr('y', base - ROW + 26).text(row.name);
  }
}

customElements.define('try-dots', TryDots);
