// Which option is best at which value of dose: one band over a log axis, cut where the best option changes.
import { d3 } from '../lib/vendor.js';
import { Drawn } from '../lib/draw.js';
import { sig } from '../lib/units.js';

class SwitchBand extends Drawn {
  /** data: {title, desc, at, ranges: [{name, from, to?}], unit} */
  draw(data, width) {
    const edges = data.ranges.slice(1).map(range => range.from).concat(data.at > 0 ? [data.at] : []).filter(value => value > 0);
    const low = Math.min(...edges, 1e300) / 6;
    const high = Math.max(...edges, 0) * 6;
    const [left, right] = [4, width - 4];
    const x = edges.length === 0 ? () => left : d3.scaleLog([low, high], [left, right]);
    const rowHeight = 24;
    const height = 56 + data.ranges.length * rowHeight;
    const svg = d3.create('svg').attr('width', width).attr('height', height).attr('role', 'img').attr('aria-labelledby', 'switch-t switch-d');
    svg.append('title').attr('id', 'switch-t').text(data.title);
    svg.append('desc').attr('id', 'switch-d').text(data.desc);
    data.ranges.forEach((range, i) => {
      const from = i === 0 ? left : x(range.from);
      const to = range.to === undefined ? right : x(range.to);
      const y = 22 + i * rowHeight;
      svg.append('rect').attr('class', range.here ? 'switch-here' : 'switch-part').attr('x', from).attr('y', y).attr('width', Math.max(1, to - from)).attr('height', rowHeight - 6);
      const inside = to - from > range.name.length * 7.2 + 10;
      const before = !inside && from > width / 2;
      svg.append('text').attr('class', inside && range.here ? 'on-band' : 'strong halo').attr('y', y + 13)
        .attr('x', inside ? from + 6 : before ? from - 6 : to + 6).attr('text-anchor', before ? 'end' : 'start').text(range.name);
    });
    if (edges.length > 0) this.#axis(svg, data, x, width, height - 26);
    this.replaceChildren(svg.node());
  }

  #axis(svg, data, x, width, bottom) {
    const axis = svg.append('g').attr('class', 'axis').attr('transform', `translate(0,${bottom})`);
    axis.append('path').attr('d', `M4 0H${width - 4}`);
    let free = -Infinity;
    for (const range of data.ranges.slice(1)) {
      const at = x(range.from);
      axis.append('line').attr('x1', at).attr('x2', at).attr('y2', 5);
      if (at - 30 < free) continue;
      free = at + 34;
      axis.append('text').attr('y', 18).attr('x', Math.min(width - 34, Math.max(34, at))).attr('text-anchor', 'middle').text(sig(range.from));
    }
    if (!(data.at > 0)) return;
    svg.append('line').attr('class', 'here').attr('x1', x(data.at)).attr('x2', x(data.at)).attr('y1', 14).attr('y2', bottom);
    svg.append('text').attr('class', 'strong halo').attr('x', Math.min(width - 60, Math.max(60, x(data.at)))).attr('y', 11).attr('text-anchor', 'middle').text(`given: ${sig(data.at)}`);
  }
}

customElements.define('switch-band', SwitchBand);
