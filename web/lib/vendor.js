// The only place that knows where the libraries lie.
import '/webjars/d3/7.9.0/dist/d3.min.js';

export const d3 = globalThis.d3;
export { html, svg, render, nothing } from '/webjars/lit-html/3.3.2/lit-html.js';
export { live } from '/webjars/lit-html/3.3.2/directives/live.js';
export { repeat } from '/webjars/lit-html/3.3.2/directives/repeat.js';
export { keyed } from '/webjars/lit-html/3.3.2/directives/keyed.js';
