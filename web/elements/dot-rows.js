// Rows of marks on one axis of dose rates: read against calculated, one step after another, one distance after another.
import { d3 } from '../lib/vendor.js';
import { Drawn } from '../lib/draw.js';
import { rateScale } from '../lib/log-axis.js';

class DotRows extends Drawn {
  /**
   * data: {id, rows: [{label, marks: [{usvPerH, kind}], span: [low, high], bounds: [usvPerH], flag, words}], title, desc}
   * kind is dot, ring or diamond; a span is a thin bar behind the marks.
   */
  draw(data, width) {
    const narrow = width < 480;
    const label = narrow ? 0 : Math.min(270, width * 0.38);
    const row = narrow ? 38 : 26;
    const margin = { top: 26, right: 16, left: label + 12 };
    const height = margin.top + data.rows.length * row + 8;
    const values = data.rows.flatMap(each => [...each.marks.map(mark => mark.usvPerH), ...(each.span ?? []), ...(each.bounds ?? [])]);
    const x = rateScale(values, [margin.left, width - margin.right], narrow ? 4 : 7);
    const svg = d3.create('svg').attr('width', width).attr('height', height).attr('role', 'img').attr('aria-labelledby', `${data.id}-t ${data.id}-d`);
    svg.append('title').attr('id', `${data.id}-t`).text(data.title);
    svg.append('desc').attr('id', `${data.id}-d`).text(data.desc);
    const axis = svg.append('g').attr('class', 'axis soft');
    let free = -Infinity;
    x.ticks.forEach((tick, i) => {
      const at = x.at(tick.value);
      if (at < free) return;
      free = at + 56;
      axis.append('line').attr('x1', at).attr('x2', at).attr('y1', margin.top - 6).attr('y2', height);
      axis.append('text').attr('x', at).attr('y', 12).attr('text-anchor', at > width - 50 ? 'end' : 'middle').text(x.log || i > 0 ? tick.words : `${tick.words} µSv/h`);
    });
    data.rows.forEach((each, i) => this.#row(svg, each, x, margin.top + i * row, row, { narrow, label }));
    this.replaceChildren(svg.node());
  }

  #row(svg, row, x, top, height, { narrow, label }) {
    const y = top + (narrow ? height - 11 : height / 2);
    svg.append('text').attr('class', row.flag ? 'copper halo' : 'row-name halo').attr('x', narrow ? 2 : label).attr('y', narrow ? top + 13 : y + 4).attr('text-anchor', narrow ? 'start' : 'end').text(row.label);
    if (row.span) svg.append('line').attr('class', 'span').attr('x1', x.at(row.span[0])).attr('x2', x.at(row.span[1])).attr('y1', y).attr('y2', y);
    for (const bound of row.bounds ?? []) {
      for (const off of [-1.5, 1.5]) svg.append('line').attr('class', 'bound').attr('x1', x.at(bound) + off).attr('x2', x.at(bound) + off).attr('y1', y - 8).attr('y2', y + 8);
    }
    for (const mark of row.marks) {
      const at = x.at(mark.usvPerH);
      if (mark.kind === 'diamond') svg.append('path').attr('class', 'read').attr('d', `M${at} ${y - 6}l6 6l-6 6l-6 -6z`);
      else svg.append('circle').attr('class', mark.kind === 'ring' ? 'ring-mark' : 'dot-mark').attr('cx', at).attr('cy', y).attr('r', 4.5);
    }
  }
}

customElements.define('dot-rows', DotRows);
