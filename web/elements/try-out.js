// What the outlook would be with what stands in a form: drawn again at every change, kept nowhere. The last picture stays until the next is there.
import { html, nothing, render } from '../lib/vendor.js';
import { ask } from '../lib/api.js';
import { say } from '../lib/focus.js';
import { fixed, msv } from '../lib/units.js';
import { read } from '../forms/read.js';
import { labelsOf, placeOf, worded } from '../forms/faults.js';
import { figureFrame } from './figure-frame.js';
import './try-dots.js';

const SAY_AFTER_MS = 1200;
let wanted = false;               // once asked for, forms that are opened later show it too

class TryOut extends HTMLElement {
  #form;                          // {camp, kind, session}
  #kept;
  #tried;
  #asked;                         // the value of the picture, or of the one under way
  #busy = false;
  #again = false;
  #trouble = '';
  #saying;
  #around;
  #data;
  #listen = () => this.#changed();

  set form(form) {
    if (this.#form?.session !== form.session) {
      this.#form = form;
      this.#kept = this.#tried = this.#asked = undefined;
      this.#trouble = '';
    }
    if (wanted) this.#changed();
    this.#show();
  }

  connectedCallback() {
    this.#around = this.parentElement;
    for (const what of ['input', 'change']) this.#around.addEventListener(what, this.#listen);
  }

  disconnectedCallback() {
    for (const what of ['input', 'change']) this.#around.removeEventListener(what, this.#listen);
    clearTimeout(this.#saying);
  }

  get #address() { return `/api/campaigns/${encodeURIComponent(this.#form.camp.id)}/what-if`; }

  /** Draws once more if the form says something else than what was drawn; one at a time, the latest last. */
  async #changed() {
    if (!wanted) return;
    if (this.#busy) {
      this.#again = true;
      return;
    }
    const { session, kind } = this.#form;
    const { value, faults } = read(session.fields, session.draft);
    const text = faults.length > 0 ? JSON.stringify(faults) : JSON.stringify(value);
    if (text === this.#asked) return;
    this.#asked = text;
    this.#busy = true;
    this.#show();
    try {
      if (faults.length > 0) throw Object.assign(new Error(''), { errors: faults });
      this.#kept ??= (await ask('POST', this.#address, { body: {} })).body;
      this.#tried = (await ask('POST', this.#address, { body: { kind, value } })).body;
      this.#trouble = '';
      this.#data = this.#dots();
    } catch (problem) {
      this.#trouble = this.#words(problem, session);
    }
    this.#busy = false;
    if (session !== this.#form.session || this.#again) {
      this.#again = false;
      this.#changed();
    }
    this.#show();
    clearTimeout(this.#saying);
    this.#saying = setTimeout(() => say(this.#trouble || this.#sentence()), SAY_AFTER_MS);
  }

  #words(problem, session) {
    const first = problem.errors?.[0];
    if (!first) return problem.message;
    const known = labelsOf(session.fields, session.draft);
    return worded(known.get(placeOf(first.field, known)) ?? '', first.detail);
  }

  #target(answer) { return answer.targets.find(each => each.scope === 'campaign'); }

  #sentence() {
    const target = this.#tried && this.#target(this.#tried);
    if (!this.#tried) return 'The outlook with these figures';
    if (!target) return `With these figures the median is ${msv(this.#tried.person_usv.p50)} person-mSv; as kept ${msv(this.#kept.person_usv.p50)}`;
    return `With these figures ${target.kept.of20} of 20 outcomes keep the target; as kept ${this.#target(this.#kept)?.kept.of20 ?? 0}`;
  }

  #show() {
    render(wanted ? this.#picture() : html`<p><button class="button" type="button" id="try-out" @click=${() => { wanted = true; this.#changed(); this.#show(); }}>Try these figures</button>
      <span class="small muted">Draws the outlook as you type. Nothing is kept.</span></p>`, this);
  }

  #dots() {
    const title = this.#sentence();
    const rows = [{ name: 'as kept', outcomes: this.#kept.person_usv.outcomes, hollow: true }, { name: 'with these figures', outcomes: this.#tried.person_usv.outcomes }];
    return { rows, targetUsv: this.#target(this.#tried)?.person_usv, title,
      desc: `Collective dose of twenty equally likely outcomes, person-mSv: ${rows.map(row => `${row.name} ${msv(row.outcomes[0])} to ${msv(row.outcomes[19])}`).join('; ')}.` };
  }

  #picture() {
    const stale = this.#busy || this.#trouble !== '';
    const off = html`<button class="button little" type="button" id="try-stop" @click=${() => { wanted = false; this.#show(); }}>Stop trying</button>`;
    if (!this.#tried) return html`<section class="panel try-out" aria-label="Trying figures"><div class="head"><h2>The outlook with these figures</h2>${off}</div>
      <p class=${this.#trouble ? 'copper-text' : 'muted'}>${this.#trouble ? `Not drawn. ${this.#trouble}` : 'Drawing …'}</p></section>`;
    return html`<section class="panel try-out ${stale ? 'stale' : ''}" aria-label="Trying figures" aria-busy=${this.#busy ? 'true' : 'false'}>
      ${figureFrame({ title: this.#data.title, tools: off, picture: html`<try-dots .data=${this.#data}></try-dots>`,
    under: html`${this.#trouble ? html`<p class="copper-text">Not drawn again. ${this.#trouble}</p>` : nothing}<p class="small muted">Collective dose, person-mSv. ${fixed(this.#tried.trials, 0)} draws of the plan alone, the same as in a run; no options. Nothing of it is kept: save and run again for that.</p>`,
    caption: 'Twenty outcomes of the collective dose, person-mSv', head: ['Outcome', 'as kept', 'with these figures'],
    rows: this.#tried.person_usv.outcomes.map((usv, i) => [String(i + 1), msv(this.#kept.person_usv.outcomes[i]), msv(usv)]) })}</section>`;
  }
}

customElements.define('try-out', TryOut);
