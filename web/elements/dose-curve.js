// Collective dose over the days of a campaign: one step curve against the target, or one small curve for each group.
import { d3 } from '../lib/vendor.js';
import { Drawn } from '../lib/draw.js';
import { at, cumulate } from '../lib/cumulate.js';
import { monthTicks } from '../lib/months.js';
import { day, dayNumber, isoOf, msv, msvTyped } from '../lib/units.js';
import { plural } from '../lib/words.js';

const HEIGHT = 270;
const ROW = 40;

class DoseCurve extends Drawn {
  #input;
  #output;
  #here;
  #x;
  #points;

  /** data: {tasks, start, finish, targetUsv, groups: [[name, tasks]] | null, title, desc} */
  draw(data, width) {
    if (!this.#input) this.#build();
    this.querySelector('svg')?.remove();
    const margin = { top: 14, right: 12, bottom: 24, left: 40 };
    const height = data.groups ? data.groups.length * ROW + margin.top + margin.bottom : HEIGHT;
    const from = dayNumber(data.start);
    const to = Math.max(from + 1, dayNumber(data.finish));
    this.#points = cumulate(data.tasks);
    this.#x = d3.scaleLinear([from, to], [margin.left, width - margin.right]);
    const svg = d3.create('svg').attr('width', width).attr('height', height).attr('role', 'img').attr('aria-labelledby', 'curve-title curve-desc');
    svg.append('title').attr('id', 'curve-title').text(data.title);
    svg.append('desc').attr('id', 'curve-desc').text(data.desc);
    this.#days(svg, from, to, width, height - margin.bottom);
    if (data.groups) this.#rows(svg, data, margin, to);
    else this.#one(svg, data, margin, height, width, to);
    this.#here = svg.append('g').attr('aria-hidden', 'true');
    this.#here.append('line').attr('class', 'here').attr('y1', margin.top).attr('y2', height - margin.bottom);
    this.prepend(svg.node());
    Object.assign(this.#input, { min: from, max: to });
    if (this.#input.dataset.moved !== 'yes') this.#input.value = to;
    this.#read();
  }

  #build() {
    const reader = document.createElement('div');
    reader.className = 'reader';
    this.#input = Object.assign(document.createElement('input'), { type: 'range', id: 'curve-day' });
    this.#input.setAttribute('aria-label', 'Day to read off');
    this.#output = document.createElement('output');
    this.#output.htmlFor = 'curve-day';
    this.#input.addEventListener('input', () => { this.#input.dataset.moved = 'yes'; this.#read(); });
    reader.append(this.#input, this.#output);
    this.append(reader);
  }

  #days(svg, from, to, width, bottom) {
    const axis = svg.append('g').attr('class', 'axis').attr('transform', `translate(0,${bottom})`);
    axis.append('path').attr('d', `M${this.#x(from)} 0H${this.#x(to)}`);
    for (const tick of monthTicks(from, to, Math.max(2, Math.floor(width / 66)))) {
      const g = axis.append('g').attr('transform', `translate(${Math.round(this.#x(tick.day)) + 0.5},0)`);
      g.append('line').attr('y2', 5);
      const late = this.#x(tick.day) > width - 60;
      g.append('text').attr('y', 18).attr('text-anchor', late ? 'end' : 'start').attr('x', late ? 6 : -2).text(tick.words);
    }
  }

  #one(svg, data, margin, height, width, to) {
    const total = this.#points.at(-1)?.usv ?? 0;
    const y = d3.scaleLinear([0, Math.max(total, data.targetUsv ?? 0) * 1.08 || 1], [height - margin.bottom, margin.top]);
    const scale = svg.append('g').attr('class', 'axis soft');
    const words = d3.scaleLinear(y.domain().map(usv => usv / 1000), y.range()).tickFormat(5);
    for (const tick of y.ticks(5).filter(value => value > 0)) {
      scale.append('line').attr('x1', margin.left).attr('x2', width - margin.right).attr('y1', y(tick)).attr('y2', y(tick));
      scale.append('text').attr('x', margin.left - 6).attr('y', y(tick) + 4).attr('text-anchor', 'end').text(words(tick / 1000));
    }
    scale.append('text').attr('x', margin.left - 6).attr('y', y(0) + 4).attr('text-anchor', 'end').text('0');
    const d = stepPath(this.#points, this.#x, y, to);
    svg.append('path').attr('class', 'under-curve').attr('d', `${d}V${y(0)}H${margin.left}Z`);
    svg.append('path').attr('class', 'curve').attr('d', d);
    svg.append('circle').attr('class', 'end-dot').attr('cx', this.#x(to)).attr('cy', y(total)).attr('r', 4);
    if (data.targetUsv) {
      svg.append('line').attr('class', 'target-line').attr('x1', margin.left).attr('x2', width - margin.right).attr('y1', y(data.targetUsv)).attr('y2', y(data.targetUsv));
      svg.append('text').attr('class', 'strong halo').attr('x', margin.left + 6).attr('y', y(data.targetUsv) - 6).text(`target ${msvTyped(data.targetUsv)} person-mSv`);
    }
    const below = (data.targetUsv ?? 0) >= total * 0.8;
    svg.append('text').attr('class', `water ${below ? '' : 'halo'}`).attr('text-anchor', 'end').attr('x', this.#x(to) - 8)
      .attr('y', below ? Math.min(y(at(this.#points, this.#x.invert(this.#x(to) - 110)).usv) + 24, height - margin.bottom - 8) : Math.max(12, y(total) - 10)).text(`forecast ${msv(total)}`);
  }

  #rows(svg, data, margin, to) {
    const top = Math.max(...data.groups.map(([, tasks]) => tasks.reduce((sum, task) => sum + task.person_usv, 0)), 1);
    data.groups.forEach(([name, tasks], i) => {
      const base = margin.top + (i + 1) * ROW;
      const points = cumulate(tasks);
      const y = d3.scaleLinear([0, top], [base, base - ROW + 6]);
      const d = stepPath(points, this.#x, y, to);
      svg.append('path').attr('class', 'layer l1').attr('d', `${d}V${base}H${margin.left}Z`);
      svg.append('path').attr('class', 'waterline').attr('d', `M${margin.left} ${base}H${this.#x(to)}`);
      svg.append('text').attr('class', 'halo').attr('x', margin.left + 2).attr('y', base - ROW + 24).text(name);
      svg.append('text').attr('class', 'strong halo').attr('text-anchor', 'end').attr('x', this.#x(to) - 4).attr('y', y(points.at(-1)?.usv ?? 0) - 4)
        .text(msv(points.at(-1)?.usv ?? 0));
    });
  }

  #read() {
    const number = Number(this.#input.value);
    const found = at(this.#points, number);
    const words = `By ${day(isoOf(number))}: ${msv(found.usv)} person-mSv, ${found.finished} of ${plural(this.data.tasks.length, 'task')} finished.`;
    this.#here.attr('transform', `translate(${this.#x(number)},0)`);
    this.#output.value = words;
    this.#input.setAttribute('aria-valuetext', words);
  }
}

function stepPath(points, x, y, to) {
  let d = `M${x.range()[0]} ${y(0)}`;
  for (const point of points) d += `H${x(point.day).toFixed(1)}V${y(point.usv).toFixed(1)}`;
  return `${d}H${x(to)}`;
}

customElements.define('dose-curve', DoseCurve);
