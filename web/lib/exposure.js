// What the pages ask about calculated dose rates, and plain words for what comes back.
import { ask } from './api.js';
import { Session } from '../forms/session.js';
import { read } from '../forms/read.js';

const FROM = { survey: 'measured', background: 'background only', calculated: 'calculated', calibrated: 'calibrated' };
const STATE = { 'in-place': 'in place', 'in-basket': 'in the basket', 'on-hook': 'on the hook', standing: 'standing' };

export const fromWord = from => FROM[from] ?? from;
export const stateWord = state => STATE[state] ?? state;
export const exposureAt = (camp, what = '') => `/api/campaigns/${encodeURIComponent(camp.id)}/exposure${what ? `/${what}` : ''}`;

/** Areas that a rate can be calculated for: first those whose plan uses it, and of them the hottest. */
export function placedAreas(camp) {
  const rates = new Map((camp.forecast?.areas ?? []).map(area => [area.area, area.history[0]?.usv_per_h ?? 0]));
  const worked = area => (area.rate_from === 'calculated' || area.rate_from === 'calibrated' ? 1 : 0);
  return camp.doc.areas.filter(area => area.sketch && !camp.notCalculable?.has(area.code)).sort((a, b) => worked(b) - worked(a) || (rates.get(b.code) ?? 0) - (rates.get(a.code) ?? 0));
}

/** A form whose answer is shown, not stored. */
export class Asking extends Session {
  answer = null;

  async ask() {
    const { value, faults } = read(this.fields, this.draft);
    if (faults.length > 0) return this.refuse(faults);
    this.faults = new Map();
    this.general = [];
    const found = this.method === 'GET' ? await this.#get(value) : await this.sendValue(value);
    if (found) this.answer = found.body;
    return found;
  }

  async #get(value) {
    const query = new URLSearchParams(Object.entries(value).filter(([, each]) => each !== undefined));
    this.busy = true;
    try {
      return await ask('GET', `${this.address}?${query}`);
    } catch (problem) {
      return this.refuse(problem.errors?.length ? problem.errors : [{ field: '', detail: problem.message }]);
    } finally {
      this.busy = false;
    }
  }
}
