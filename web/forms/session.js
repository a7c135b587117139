// One form while it is open: draft, faults, what somebody else saved meanwhile.
import { ask } from '../lib/api.js';
import { draftOf } from './draft.js';
import { read } from './read.js';
import { labelsOf, placeOf, worded } from './faults.js';

export class Session {
  faults = new Map();
  general = [];
  clash = null;
  busy = false;
  #opened = new Map();

  /** @param value what the form starts with; {@code etag} of the stored object, or null for a new one */
  constructor({ fields, value, etag, address, method }) {
    Object.assign(this, { fields, base: value ?? {}, etag, address, method, draft: draftOf(fields, value) });
    this.first = JSON.stringify(this.draft);
  }

  /** Sends the draft; on success answers with what the server stored, else with null and faults. */
  async send() {
    return this.sendAs(value => value, '');
  }

  /** The same, wrapped into something larger; {@code inside} is where the draft then lies. */
  async sendAs(wrap, inside) {
    const { value, faults } = read(this.fields, this.draft);
    return faults.length > 0 ? this.refuse(faults) : this.sendValue(wrap(value), inside);
  }

  async sendValue(value, inside = '') {
    this.busy = true;
    try {
      return await ask(this.method, this.address, { body: value, etag: this.etag ?? undefined });
    } catch (problem) {
      if (problem.status === 412 && problem.current) this.clash = { now: problem.current, etag: problem.currentEtag, mine: value };
      const errors = problem.errors?.length ? problem.errors : [{ field: '', detail: problem.message }];
      return this.refuse(errors.map(error => (error.field.startsWith(inside) ? { ...error, field: error.field.slice(inside.length) } : error)));
    } finally {
      this.busy = false;
    }
  }

  refuse(errors) {
    const known = labelsOf(this.fields, this.draft);
    this.faults = new Map();
    this.general = [];
    for (const { field, detail } of errors) {
      const place = placeOf(field, known);
      const words = worded(known.get(place) ?? '', detail);
      if (place === '') this.general.push(field && !known.has(field) ? `${words} (${field})` : words);
      else if (!this.faults.has(place)) this.faults.set(place, words);
    }
    return null;
  }

  /** Whether the boxes hold something else than at first. */
  get touched() { return JSON.stringify(this.draft) !== this.first; }

  get failed() { return this.faults.size + this.general.length > 0; }

  /** A folded row is open if there is a fault in it, if it was opened, or if it is the only one. */
  opened(path, count) {
    if ([...this.faults.keys()].some(at => at.startsWith(path))) return true;
    return this.#opened.get(path) ?? (count === 1 || this.method === 'POST');
  }

  remember(path, event) {
    if (event.target === event.currentTarget) this.#opened.set(path, event.target.open);
  }
}
