// What was received, the fan of what may come, and where it lands: twenty dots on the same axis as the fan.
import { d3 } from '../lib/vendor.js';
import { Drawn } from '../lib/draw.js';
import { BANDS, dots } from '../lib/dots.js';
import { monthTicks } from '../lib/months.js';
import { day, dayNumber, isoOf, msv, msvTyped } from '../lib/units.js';

const HEIGHT = 300;
const DOT = 5;

class FanDots extends Drawn {
  #input;
  #output;
  #here;
  #x;

  /**
   * data: {weeks: [{starts, spread}] as the server sends them, ends: [iso], spread, targetUsv, received: [{on, usv}], plan: [{on, usv}], asOf,
   * runs: [[usv]] | null, weekly, solid, title, desc}
   */
  draw(data, width) {
    if (!this.#input) this.#build();
    this.querySelector('svg')?.remove();
    const side = data.weekly ? 12 : width < 480 ? 74 : 118;
    const margin = { top: 16, right: side, bottom: 24, left: 40 };
    const from = dayNumber(data.start);
    const to = Math.max(from + 7, dayNumber(data.ends.at(-1)));
    this.#x = d3.scaleLinear([from, to], [margin.left, width - margin.right]);
    const top = Math.max(...data.weeks.map(week => week.spread.outcomes[19]), data.weekly ? 0 : data.spread.outcomes[19],
      data.weekly ? 0 : data.targetUsv ?? 0, ...data.received.map(point => point.usv), 1);
    const y = d3.scaleLinear([0, top * 1.06], [HEIGHT - margin.bottom, margin.top]);
    const svg = d3.create('svg').attr('width', width).attr('height', HEIGHT).attr('role', 'img').attr('aria-labelledby', 'fan-t fan-d');
    svg.append('title').attr('id', 'fan-t').text(data.title);
    svg.append('desc').attr('id', 'fan-d').text(data.desc);
    this.#axes(svg, y, { from, to, width, margin });
    if (data.weekly) this.#weeks(svg, data, y);
    else this.#fan(svg, data, y, { from, to, width, margin });
    this.#here = svg.append('g').attr('aria-hidden', 'true');
    this.#here.append('line').attr('class', 'here').attr('y1', margin.top).attr('y2', HEIGHT - margin.bottom);
    this.prepend(svg.node());
    Object.assign(this.#input, { min: 0, max: data.weeks.length - 1 });
    if (this.#input.dataset.moved !== 'yes') this.#input.value = data.weeks.length - 1;
    this.#read();
  }

  #build() {
    const reader = document.createElement('div');
    reader.className = 'reader';
    this.#input = Object.assign(document.createElement('input'), { type: 'range', id: 'fan-week', step: 1 });
    this.#input.setAttribute('aria-label', 'Week to read off');
    this.#output = document.createElement('output');
    this.#output.htmlFor = 'fan-week';
    this.#input.addEventListener('input', () => { this.#input.dataset.moved = 'yes'; this.#read(); });
    reader.append(this.#input, this.#output);
    this.append(reader);
  }

  #axes(svg, y, { from, to, width, margin }) {
    const axis = svg.append('g').attr('class', 'axis').attr('transform', `translate(0,${HEIGHT - margin.bottom})`);
    axis.append('path').attr('d', `M${this.#x(from)} 0H${this.#x(to)}`);
    for (const tick of monthTicks(from, to, Math.max(2, Math.floor((width - margin.right) / 66)))) {
      const g = axis.append('g').attr('transform', `translate(${Math.round(this.#x(tick.day)) + 0.5},0)`);
      g.append('line').attr('y2', 5);
      const late = this.#x(tick.day) > width - margin.right - 48;
      g.append('text').attr('y', 18).attr('text-anchor', late ? 'end' : 'start').attr('x', late ? 6 : -2).text(tick.words);
    }
    const scale = svg.append('g').attr('class', 'axis soft');
    const words = d3.scaleLinear(y.domain().map(usv => usv / 1000), y.range()).tickFormat(5);
    for (const tick of y.ticks(5)) {
      if (tick > 0) scale.append('line').attr('x1', margin.left).attr('x2', width - margin.right).attr('y1', y(tick)).attr('y2', y(tick));
      scale.append('text').attr('x', margin.left - 6).attr('y', y(tick) + 4).attr('text-anchor', 'end').text(tick > 0 ? words(tick / 1000) : '0');
    }
  }

  #fan(svg, data, y, { from, to, width, margin }) {
    const now = data.asOf ? dayNumber(data.asOf) : from;
    const before = data.received.at(-1)?.usv ?? 0;
    const points = [{ day: now, outcomes: Array(20).fill(before) },
      ...data.weeks.map((week, i) => ({ day: dayNumber(data.ends[i]), outcomes: week.spread.outcomes })).filter(point => point.day > now)];
    const area = ([low, high]) => d3.area().x(point => this.#x(point.day)).y0(point => y(point.outcomes[low])).y1(point => y(point.outcomes[high]))(points);
    BANDS.forEach((band, i) => svg.append('path').attr('class', `fan f${[19, 8, 5][i]}`).attr('d', area(band)));
    for (const run of data.runs ?? []) {
      const line = points.slice(1).map((point, i) => [this.#x(point.day), y(run[data.weeks.length - points.length + 1 + i])]);
      svg.append('path').attr('class', 'one-run').attr('d', d3.line()([[this.#x(now), y(before)], ...line]));
    }
    if (data.plan.length > 0 && data.asOf) {
      svg.append('path').attr('class', 'plan-line').attr('d', d3.line().x(point => this.#x(Math.min(to, dayNumber(point.on)))).y(point => y(point.usv)).curve(d3.curveStepAfter)(data.plan));
    }
    if (data.received.length > 0) {
      const past = [{ on: data.start, usv: 0 }, ...data.received];
      svg.append('path').attr('class', 'fact-line').attr('d', d3.line().x(point => this.#x(dayNumber(point.on))).y(point => y(point.usv)).curve(d3.curveStepAfter)(past));
      svg.append('circle').attr('class', 'fact-dot').attr('cx', this.#x(now)).attr('cy', y(before)).attr('r', 4);
      svg.append('text').attr('class', 'strong halo').attr('x', this.#x(now) - 6).attr('y', y(before) - 8).attr('text-anchor', this.#x(now) > margin.left + 90 ? 'end' : 'start').text(`${msv(before)} received`);
    }
    if (data.targetUsv) {
      svg.append('line').attr('class', 'target-line').attr('x1', margin.left).attr('x2', width - 4).attr('y1', y(data.targetUsv)).attr('y2', y(data.targetUsv));
      svg.append('text').attr('class', 'strong halo').attr('x', margin.left + 6).attr('y', y(data.targetUsv) - 6).text(`target ${msvTyped(data.targetUsv)} person-mSv`);
    }
    const bin = Math.abs(y.invert(0) - y.invert(2 * DOT + 1));
    const left = this.#x(to) + 12;
    const target = data.targetUsv;
    for (const dot of dots(data.spread.outcomes, bin, target ?? 0, target)) {
      const cx = left + dot.place * (2 * DOT + 1);
      const cy = y(dot.at);
      if (dot.above) svg.append('path').attr('class', 'outcome above').attr('d', `M${cx} ${cy - DOT}l${DOT} ${DOT}l${-DOT} ${DOT}l${-DOT} ${-DOT}z`);
      else svg.append('circle').attr('class', `outcome ${data.hollow ? 'hollow' : ''}`).attr('cx', cx).attr('cy', cy).attr('r', DOT - 0.5);
    }
  }

  #weeks(svg, data, y) {
    data.weeks.forEach((week, i) => {
      const left = this.#x(Math.max(dayNumber(week.starts), this.#x.domain()[0])) + 1;
      const right = Math.max(left + 2, this.#x(dayNumber(data.ends[i])) - 1);
      BANDS.forEach(([low, high], k) => svg.append('rect').attr('class', `fan f${[19, 8, 5][k]}`).attr('x', left).attr('width', right - left)
        .attr('y', y(week.spread.outcomes[high])).attr('height', Math.max(1, y(week.spread.outcomes[low]) - y(week.spread.outcomes[high]))));
    });
    for (const point of data.received) svg.append('circle').attr('class', 'fact-dot').attr('cx', this.#x(dayNumber(point.on))).attr('cy', y(point.usv)).attr('r', 3.5);
  }

  #read() {
    const { weeks, ends, weekly } = this.data;
    const i = Math.min(Number(this.#input.value), weeks.length - 1);
    const { outcomes } = weeks[i].spread;
    const words = weekly ? `Week from ${day(weeks[i].starts)}: 8 in 10 outcomes between ${msv(outcomes[2])} and ${msv(outcomes[17])} person-mSv.`
      : `By ${day(ends[i])}: 8 in 10 outcomes between ${msv(outcomes[2])} and ${msv(outcomes[17])} person-mSv.`;
    this.#here.attr('transform', `translate(${this.#x(dayNumber(ends[i]))},0)`);
    this.#output.value = words;
    this.#input.setAttribute('aria-valuetext', words);
  }
}

/** The last day of each week: the day before the next one starts; of the last one the day when all is done. */
export const weekEnds = (weeks, last) => weeks.map((week, i) => (i + 1 < weeks.length ? isoOf(dayNumber(weeks[i + 1].starts) - 1) : last < week.starts ? week.starts : last));

customElements.define('fan-dots', FanDots);
