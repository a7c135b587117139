// How busy a resource is: a column for each week, filled to the part of its hours that is taken.
import { d3 } from '../lib/vendor.js';
import { Drawn } from '../lib/draw.js';
import { monthTicks } from '../lib/months.js';
import { dayNumber } from '../lib/units.js';

class ResourceWeeks extends Drawn {
  /** data: {code, weeks: [{monday, busy_hours, capacity_hours}], title, desc} */
  draw({ code, weeks, title, desc }, width) {
    const height = 120;
    const margin = { top: 16, right: 8, bottom: 24, left: 36 };
    const first = dayNumber(weeks[0].monday);
    const x = d3.scaleLinear([first, dayNumber(weeks.at(-1).monday) + 7], [margin.left, width - margin.right]);
    const y = d3.scaleLinear([0, Math.max(1, ...weeks.map(week => week.busy_hours), ...weeks.map(week => week.capacity_hours))], [height - margin.bottom, margin.top]);
    const svg = d3.create('svg').attr('width', width).attr('height', height).attr('role', 'img').attr('aria-labelledby', `use-${code}-t use-${code}-d`);
    svg.append('title').attr('id', `use-${code}-t`).text(title);
    svg.append('desc').attr('id', `use-${code}-d`).text(desc);
    svg.append('text').attr('x', 0).attr('y', 10).text('h a week');
    const axis = svg.append('g').attr('class', 'axis');
    for (const tick of y.ticks(3)) axis.append('text').attr('x', margin.left - 6).attr('y', y(tick) + 4).attr('text-anchor', 'end').text(tick);
    for (const week of weeks) {
      const at = x(dayNumber(week.monday));
      const wide = Math.max(1.5, x(dayNumber(week.monday) + 7) - at - 1);
      svg.append('rect').attr('class', 'week over').attr('x', at).attr('y', y(week.capacity_hours)).attr('width', wide).attr('height', Math.max(0, y(0) - y(week.capacity_hours)));
      if (week.busy_hours > 0) svg.append('rect').attr('class', `week ${week.busy_hours > 0.95 * week.capacity_hours ? 'full' : ''}`).attr('x', at).attr('y', y(week.busy_hours)).attr('width', wide).attr('height', y(0) - y(week.busy_hours));
    }
    axis.append('path').attr('d', `M${margin.left} ${y(0)}H${width - margin.right}`);
    for (const tick of monthTicks(...x.domain(), Math.max(2, Math.floor(width / 80)))) axis.append('text').attr('x', Math.min(x(tick.day), width - 44)).attr('y', height - 8).text(tick.words);
    this.replaceChildren(svg.node());
  }
}

customElements.define('resource-weeks', ResourceWeeks);
