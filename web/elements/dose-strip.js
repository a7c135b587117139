import { html, nothing, svg } from '../lib/vendor.js';

/**
 * One strip at all scales: what is there already, the forecast after it, a dashed target or a double line for a bound.
 * The number always stands beside it in words, hence hidden from listeners.
 */
export function doseStrip({ value, before = 0, target, bound, top }) {
  const scale = Math.max(top ?? 0, before + value, target ?? 0, bound ?? 0) || 1;
  const at = part => `${Math.min(100, (part / scale) * 100).toFixed(2)}%`;
  const over = Math.min(target ?? Infinity, bound ?? Infinity) < before + value;
  return svg`<svg class="strip" aria-hidden="true" height="14">
    <rect class="ground" x="0" y="6" width="100%" height="2"></rect>
    ${before > 0 ? svg`<rect class="before" x="0" y="3" width=${at(before)} height="8"></rect>` : nothing}
    <rect class="planned" x=${at(before)} y="3" width=${at(value)} height="8"></rect>
    ${target ? svg`<line class="target" x1=${at(target)} x2=${at(target)} y1="0" y2="14"></line>` : nothing}
    ${bound ? svg`<g transform="translate(-1.5)"><line class="bound" x1=${at(bound)} x2=${at(bound)} y1="0" y2="14"></line></g>
      <g transform="translate(1.5)"><line class="bound" x1=${at(bound)} x2=${at(bound)} y1="0" y2="14"></line></g>` : nothing}
    ${over ? svg`<circle class="over" cx=${at(before + value)} cy="7" r="5"></circle>` : nothing}
  </svg>`;
}

export const stripKey = (...words) => html`<p class="strip-key" aria-hidden="true">
  ${words.includes('before') ? html`<span>${svg`<svg><rect class="before" x="0" y="2" width="22" height="8"></rect></svg>`}received before</span>` : nothing}
  ${words.includes('planned') ? html`<span>${svg`<svg class="strip"><rect class="planned" x="0" y="2" width="22" height="8"></rect></svg>`}forecast</span>` : nothing}
  ${words.includes('target') ? html`<span>${svg`<svg class="strip"><line class="target" x1="11" x2="11" y1="0" y2="12"></line></svg>`}target</span>` : nothing}
  ${words.includes('bound') ? html`<span>${svg`<svg class="strip"><line class="bound" x1="9.5" x2="9.5" y1="0" y2="12"></line><line class="bound" x1="12.5" x2="12.5" y1="0" y2="12"></line></svg>`}constraint</span>` : nothing}
  ${words.includes('over') ? html`<span>${svg`<svg class="strip"><circle class="over" cx="11" cy="6" r="5"></circle></svg>`}above it</span>` : nothing}
</p>`;
