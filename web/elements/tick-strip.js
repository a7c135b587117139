import { html, nothing, svg } from '../lib/vendor.js';

/**
 * One strip at all scales: received as a bar, the twenty outcomes at the finish as ticks, the plan as a notch, a dashed target or a double
 * line for a bound. Ticks above it are long and copper; the count stands beside the strip in words, hence hidden from listeners.
 */
export function tickStrip({ outcomes, received = 0, plan, target, bound, top }) {
  const line = Math.min(target ?? Infinity, bound ?? Infinity);
  const scale = Math.max(top ?? 0, outcomes.at(-1), plan ?? 0, target ?? 0, bound ?? 0) || 1;
  const at = part => `${Math.min(100, (part / scale) * 100).toFixed(2)}%`;
  return svg`<svg class="strip ticks" aria-hidden="true" height="16">
    <rect class="ground" x="0" y="7" width="100%" height="2"></rect>
    ${received > 0 ? svg`<rect class="before" x="0" y="4" width=${at(received)} height="8"></rect>` : nothing}
    ${outcomes.map(value => svg`<line class=${value > line ? 'tick above' : 'tick'} x1=${at(value)} x2=${at(value)} y1=${value > line ? 1 : 4} y2=${value > line ? 15 : 12}></line>`)}
    ${plan === undefined ? nothing : svg`<svg x=${at(plan)} overflow="visible"><path class="notch" d="M-3.5 0h7l-3.5 4z"></path></svg>`}
    ${target ? svg`<line class="target" x1=${at(target)} x2=${at(target)} y1="0" y2="16"></line>` : nothing}
    ${bound ? svg`<g transform="translate(-1.5)"><line class="bound" x1=${at(bound)} x2=${at(bound)} y1="0" y2="16"></line></g>
      <g transform="translate(1.5)"><line class="bound" x1=${at(bound)} x2=${at(bound)} y1="0" y2="16"></line></g>` : nothing}
  </svg>`;
}

const KEYS = {
  received: ['received', svg`<svg class="strip"><rect class="before" x="0" y="2" width="22" height="8"></rect></svg>`],
  outcomes: ['20 equally likely outcomes', svg`<svg class="strip">${[3, 8, 11, 14, 20].map(x => svg`<line class="tick" x1=${x} x2=${x} y1="2" y2="10"></line>`)}</svg>`],
  above: ['outcome above it', svg`<svg class="strip"><line class="tick above" x1="11" x2="11" y1="0" y2="12"></line></svg>`],
  plan: ['plan', svg`<svg class="strip"><path class="notch" d="M7 2h8l-4 5z"></path></svg>`],
  target: ['target', svg`<svg class="strip"><line class="target" x1="11" x2="11" y1="0" y2="12"></line></svg>`],
  bound: ['constraint', svg`<svg class="strip"><line class="bound" x1="9.5" x2="9.5" y1="0" y2="12"></line><line class="bound" x1="12.5" x2="12.5" y1="0" y2="12"></line></svg>`],
};

export const tickKey = (...names) => html`<p class="strip-key" aria-hidden="true">${names.map(name => html`<span>${KEYS[name][1]}${KEYS[name][0]}</span>`)}</p>`;
