// What moved the median since an earlier run, one cause after the other: rises filled, falls hollow, start and end as points.
import { d3 } from '../lib/vendor.js';
import { Drawn } from '../lib/draw.js';
import { msv } from '../lib/units.js';

class ChangeFall extends Drawn {
  /** data: {fromUsv, toUsv, steps: [{name, usv}], from, to, title, desc} */
  draw(data, width) {
    const row = 26;
    const margin = { top: 6, right: 56, left: 104 };
    const rows = data.steps.length + 2;
    const height = margin.top + rows * row + 4;
    let running = data.fromUsv;
    const bars = data.steps.map(step => { const before = running; running += step.usv; return { ...step, before, after: running }; });
    const values = [data.fromUsv, data.toUsv, ...bars.flatMap(bar => [bar.before, bar.after])];
    const slack = Math.max(1, (Math.max(...values) - Math.min(...values)) * 0.12);
    const x = d3.scaleLinear([Math.min(...values) - slack, Math.max(...values) + slack], [margin.left, width - margin.right]);
    const svg = d3.create('svg').attr('width', width).attr('height', height).attr('role', 'img').attr('aria-labelledby', 'fall-t fall-d');
    svg.append('title').attr('id', 'fall-t').text(data.title);
    svg.append('desc').attr('id', 'fall-d').text(data.desc);
    const name = (words, i, strong) => svg.append('text').attr('class', strong ? 'strong' : '').attr('x', 2).attr('y', margin.top + i * row + 17).text(words);
    const point = (usv, words, i) => {
      const y = margin.top + i * row + 13;
      name(words, i, true);
      svg.append('circle').attr('class', 'fall-point').attr('cx', x(usv)).attr('cy', y).attr('r', 5);
      svg.append('text').attr('class', 'strong halo').attr('x', x(usv) + 10).attr('y', y + 4).text(msv(usv));
    };
    point(data.fromUsv, data.from, 0);
    bars.forEach((bar, k) => {
      const y = margin.top + (k + 1) * row;
      name(bar.name, k + 1, false);
      svg.append('line').attr('class', 'fall-link').attr('x1', x(bar.before)).attr('x2', x(bar.before)).attr('y1', y - 6).attr('y2', y + 5);
      const least = Math.min(bar.before, bar.after);
      svg.append('rect').attr('class', `fall-bar ${bar.usv >= 0 ? 'rise' : 'drop'}`).attr('x', x(least)).attr('width', Math.max(1.5, x(Math.max(bar.before, bar.after)) - x(least))).attr('y', y + 5).attr('height', 16);
      svg.append('text').attr('class', 'halo').attr('x', x(Math.max(bar.before, bar.after)) + 6).attr('y', y + 17).text(`${bar.usv > 0 ? '+' : bar.usv < 0 ? '−' : ''}${msv(Math.abs(bar.usv))}`);
    });
    point(data.toUsv, data.to, rows - 1);
    this.replaceChildren(svg.node());
  }
}

customElements.define('change-fall', ChangeFall);
