// Each uncertain input from its lowest to its highest tenth: how far the mean outcome moves. Widest first.
import { d3 } from '../lib/vendor.js';
import { Drawn } from '../lib/draw.js';
import { msv, msvTyped } from '../lib/units.js';

class SenseBars extends Drawn {
  /** data: {rows: [{name, lowUsv, highUsv, decides}], meanUsv, targetUsv, title, desc} */
  draw(data, width) {
    const narrow = width < 560;
    const label = narrow ? 0 : Math.min(300, width * 0.36);
    const row = narrow ? 42 : 26;
    const margin = { top: 24, right: 44, left: label + 44 };
    const height = margin.top + data.rows.length * row + 6;
    const values = data.rows.flatMap(each => [each.lowUsv, each.highUsv]).concat(data.meanUsv, data.targetUsv ?? []);
    const x = d3.scaleLinear([Math.min(...values), Math.max(...values)], [margin.left, width - margin.right]).nice(4);
    const svg = d3.create('svg').attr('width', width).attr('height', height).attr('role', 'img').attr('aria-labelledby', 'sense-t sense-d');
    svg.append('title').attr('id', 'sense-t').text(data.title);
    svg.append('desc').attr('id', 'sense-d').text(data.desc);
    const axis = svg.append('g').attr('class', 'axis soft');
    const words = d3.scaleLinear(x.domain().map(usv => usv / 1000), x.range()).tickFormat(5);
    for (const tick of x.ticks(narrow ? 3 : 6)) {
      axis.append('line').attr('x1', x(tick)).attr('x2', x(tick)).attr('y1', margin.top - 6).attr('y2', height);
      axis.append('text').attr('x', x(tick)).attr('y', 12).attr('text-anchor', 'middle').text(words(tick / 1000));
    }
    data.rows.forEach((each, i) => {
      const y = margin.top + i * row + (narrow ? 20 : 4);
      svg.append('text').attr('class', each.decides ? 'copper halo' : 'row-name halo').attr('x', narrow ? 2 : label).attr('y', narrow ? y - 5 : y + 13).attr('text-anchor', narrow ? 'start' : 'end')
        .text(`${each.decides ? '◆ ' : ''}${each.name}`);
      for (const [value, kind] of [[each.lowUsv, 'low'], [each.highUsv, 'high']]) {
        const from = Math.min(x(value), x(data.meanUsv));
        svg.append('rect').attr('class', `sense-bar ${kind}`).attr('x', from).attr('y', y + 2).attr('width', Math.max(1, Math.abs(x(value) - x(data.meanUsv)))).attr('height', 13);
        svg.append('text').attr('class', 'halo').attr('x', x(value) + (value < data.meanUsv ? -4 : 4)).attr('y', y + 13).attr('text-anchor', value < data.meanUsv ? 'end' : 'start').text(msv(value));
      }
    });
    svg.append('line').attr('class', 'sense-mid').attr('x1', x(data.meanUsv)).attr('x2', x(data.meanUsv)).attr('y1', margin.top - 4).attr('y2', height);
    if (data.targetUsv) {
      svg.append('line').attr('class', 'target-line').attr('x1', x(data.targetUsv)).attr('x2', x(data.targetUsv)).attr('y1', margin.top - 4).attr('y2', height);
      svg.append('desc').text(`target ${msvTyped(data.targetUsv)}`);
    }
    this.replaceChildren(svg.node());
  }
}

customElements.define('sense-bars', SenseBars);
