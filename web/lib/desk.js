// What the log page knows of one campaign: choices, the entry under way, what is usual on this tablet.
import { ask, get } from './api.js';
import { all, announce, change, changed, forgetSent, keep, recall, remember, unsent } from './outbox.js';
import { known, mine } from './who.js';
import { emptyDraft, made, pressed, takingBack } from './logdraft.js';
import { direct, send, sending, start } from './sender.js';
import { dayHere, lasting, secure, week, workOffline } from './tablet.js';
import { reasonFor } from './reason.js';

const PEOPLE = 4;
const TASKS = 3;
const EVERY_MS = 60000;
const desks = new Map();
let ticking;

/** A tablet that many use shows what was sent until midnight, also where the page stays open; what others sent, not at all. */
const forgetOld = () => forgetSent(new Date().setHours(0, 0, 0, 0), record => !mine(record)).catch(problem => console.warn(problem));

/** The desk of a campaign, with choices as fresh as the network allows. */
export async function deskOf(campaign) {
  const desk = desks.get(campaign) ?? new Desk(campaign);
  desks.set(campaign, desk);
  await desk.refresh();
  return desk;
}

class Desk {
  constructor(campaign) {
    Object.assign(this, { campaign, draft: emptyDraft(), faults: [], opened: '', records: [], others: [], said: '', choices: null, choicesAt: null, handedIn: [], settling: '', held: null, lasting: true, secure: secure(), asked: new Map() });
    this.usual = { people: [], tasks: [], areas: {}, minutes: 60 };
  }

  async refresh() {
    if (this.secure) {
      if (!this.read) {
        Object.assign(this.usual, await recall(`usual-${this.campaign}`));
        this.draft.minutes = this.usual.minutes;
        if (this.usual.tasks[0]) this.chooseTask(this.usual.tasks[0]);
        this.draft.worker = this.usual.people[0] ?? '';
        this.read = true;
        forgetOld();
        ticking ??= setInterval(forgetOld, EVERY_MS);
        workOffline();
        this.lasting = await lasting();
        changed.addEventListener('change', () => this.look());
        start();
      }
      await this.readAccount();
      await this.look();
    }
    await this.readChoices();
    await this.readHandedIn();
    this.readHeld();
  }

  /** Who writes here: whoever is signed in, and without the network who was last. */
  async readAccount() {
    const account = known()?.account;
    this.account = account ? { id: account.id, name: account.name } : await recall('account');
    if (account) await remember('account', this.account);
  }

  async readChoices() {
    const key = `choices-${this.campaign}`;
    try {
      const { body } = await get(`/api/campaigns/${encodeURIComponent(this.campaign)}/entries/choices`, { signal: AbortSignal.timeout(5000) });
      Object.assign(this, { choices: body, choicesAt: null });
      if (this.secure) await remember(key, { body, at: Date.now() });
    } catch (problem) {
      const before = this.secure && problem.status !== 401 && problem.status !== 403 && problem.status !== 404 ? await recall(key) : null;
      if (!before) throw problem;
      Object.assign(this, { choices: before.body, choicesAt: before.at });
    }
    this.openTask();
  }

  /** A task that was closed meanwhile is not chosen any more. */
  openTask() {
    if (this.draft.task && !this.task() && !this.draft.replaces && !this.draft.handed) Object.assign(this.draft, { task: '', area: '' });
    if (this.draft.task && !this.draft.area) this.chooseTask(this.draft.task);
    if (this.choices.worker && !this.draft.worker) this.draft.worker = this.choices.worker;
  }

  /** For the radiation protection officer: what was handed in and waits. */
  async readHandedIn() {
    if (!this.choices.settles || this.choicesAt) return;
    const answer = await get(`/api/campaigns/${encodeURIComponent(this.campaign)}/handed-in`).catch(() => null);
    this.handedIn = answer?.body.items.filter(item => !item.settled) ?? [];
  }

  async settle(item, how, reason) {
    this.settling = '';
    try {
      await ask('POST', `/api/campaigns/${encodeURIComponent(this.campaign)}/handed-in/${item.entry.id}/settle`, { body: { how, reason } });
    } catch (problem) {
      this.settling = problem.message;
    }
    await this.readHandedIn();
    this.redraw?.();
  }

  /** How far a task has come, as whoever is here sees it. */
  async tellProgress(task, share, closed) {
    const on = this.draft.on || (this.choices.invented ? this.choices.today : dayHere());
    await ask('POST', `/api/campaigns/${encodeURIComponent(this.campaign)}/progress`, { body: { task: task.id, on, share, closed } });
    await this.readChoices();
  }

  /** What the server has of the person who is chosen, in the week of today; none while it does not answer. */
  async readHeld() {
    const { worker } = this.draft;
    const asked = this.asking = {};
    if (!worker || this.choicesAt) {
      this.held = null;
      return;
    }
    const weeks = [dayHere(), ...(this.choices.invented ? [this.choices.today] : [])].map(week);
    const query = new URLSearchParams({ worker, from: weeks.map(([monday]) => monday).sort()[0], limit: 200 });
    const answer = await get(`/api/campaigns/${encodeURIComponent(this.campaign)}/entries?${query}`, { quiet: true, signal: AbortSignal.timeout(5000) }).catch(() => null);
    if (this.asking !== asked) return;
    const rows = answer?.body.items.filter(({ on }) => weeks.some(([monday, sunday]) => on >= monday && on <= sunday));
    this.held = rows ? { worker, rows } : null;
    this.redraw?.();
  }

  isToday(on) {
    return on === dayHere() || (this.choices.invented && on === this.choices.today);
  }

  async look() {
    const here = (await all()).filter(record => record.campaign === this.campaign);
    this.records = here.filter(mine);
    this.others = [...new Set(here.filter(record => unsent(record) && !mine(record)).map(record => record.by.name))];
    const sent = this.records.filter(record => record.state === 'sent').length;
    if (this.sent !== undefined && this.sent !== sent && this.choices) this.readHeld();
    this.sent = sent;
    this.redraw?.();
  }

  /** A key: the first digit after an entry was put into the form begins its dose anew. */
  press(key) {
    const { draft } = this;
    Object.assign(draft, { dose: pressed(draft.fresh && key !== 'del' ? '' : draft.dose, key), fresh: false });
  }

  task(id = this.draft.task) {
    return this.choices?.tasks.find(task => task.id === id);
  }

  chooseTask(id) {
    if (this.draft.task !== id) this.draft.step = '';
    this.draft.task = id;
    this.draft.area = this.usual.areas[id] ?? this.task(id)?.areas[0] ?? '';
  }

  /** Writes the entry under way down; true when it is kept. */
  async keepIt() {
    const { entry, faults } = made(this.draft, this.choices.ranges, undefined, this.choices.invented ? this.choices.today : undefined);
    this.faults = faults;
    if (!entry) return false;
    if (this.draft.handed) return this.settleAs(entry);
    const rewritten = this.draft.changing;
    try {
      if (!this.secure) await this.post(entry);
      else if (!await this.write(entry, rewritten)) return false;
    } catch (problem) {
      this.faults = [['keep', this.secure ? `This browser could not keep the entry (${problem.message}). Write it down on paper and tell the radiation protection officer.` : problem.message]];
      return false;
    }
    this.learn(entry);
    this.clear();
    return true;
  }

  /** For the next entry: who, where and how long stay. */
  clear() {
    Object.assign(this.draft, { dose: '', found: '', remark: '', on: '', step: '', replaces: null, changing: null, handed: null, fresh: false });
    this.openTask();
  }

  /** The radiation protection officer keeps a handed-in entry otherwise than it came: at once, since it is a decision. */
  async settleAs(entry) {
    const reason = await reasonFor({ title: 'Keep it as corrected', text: 'What was wrong? It is kept with the entry.', verb: 'Keep it so', needed: true });
    if (reason === null) {
      this.faults = [['keep', 'Nothing is settled yet: a correction needs its reason.']];
      return false;
    }
    try {
      await ask('POST', `/api/campaigns/${encodeURIComponent(this.campaign)}/handed-in/${entry.id}/settle`, { body: { how: 'corrected', reason, entry } });
    } catch (problem) {
      this.faults = [['keep', problem.message]];
      return false;
    }
    this.clear();
    await this.readHandedIn();
    this.readHeld();
    return true;
  }

  async write(entry, rewritten) {
    const by = this.account ? { by: this.account } : {};
    const record = { id: entry.id, campaign: this.campaign, ...by, entry, state: 'kept', kept_at: Date.now(), needs: [], refusal: '', words: this.wordsOf(entry) };
    if (!rewritten) await keep(record);
    else if (!await change(entry.id, before => (before.state === 'needs' ? { ...record, kept_at: before.kept_at } : null))) return this.tooLate(entry.id);
    await this.look();
    announce({ kept: true });
    return true;
  }

  /** The entry went on as it was while it was rewritten: what was typed stays in the form, and is offered as a correction. */
  async tooLate(id) {
    const now = (await all()).find(record => record.id === id);
    if (now?.state === 'handing' || now?.state === 'handed') {
      this.faults = [['keep', 'This entry went to the radiation protection officer as it was. What you typed is still in the form: tell the officer.']];
    } else {
      Object.assign(this.draft, { changing: null, replaces: id });
      this.faults = [['keep', 'This entry went out as it was. What you typed is still in the form: press again to keep it as a correction.']];
    }
    return false;
  }

  /** Without a secure page nothing can be kept: the entry goes out at once, or stays in the form. */
  async post(entry) {
    const confirmed = this.asked.get(JSON.stringify({ ...entry, id: '', made_at: '' })) ?? [];
    try {
      await direct(this.campaign, { ...entry, confirmed });
    } catch (problem) {
      if (problem.needs?.length) {
        this.asked.set(JSON.stringify({ ...entry, id: '', made_at: '' }), problem.needs.map(need => need.check).concat(confirmed));
        throw new Error(`${problem.needs.map(need => need.words).join(' ')} Press again to keep it all the same.`);
      }
      throw problem;
    }
    this.records = [...this.records, { id: entry.id, campaign: this.campaign, entry, state: 'sent', kept_at: Date.now(), sent_at: Date.now(), needs: [], words: this.wordsOf(entry) }];
  }

  wordsOf(entry) {
    return { task: this.task(entry.task)?.name ?? entry.task, area: this.choices.areas.find(area => area.code === entry.area)?.name ?? entry.area };
  }

  learn(entry) {
    const first = (list, value, most) => [value, ...list.filter(each => each !== value)].slice(0, most);
    this.usual = { people: first(this.usual.people, entry.worker, 8), tasks: first(this.usual.tasks, entry.task, 8), areas: { ...this.usual.areas, [entry.task]: entry.area }, minutes: this.draft.minutes };
    if (this.secure) remember(`usual-${this.campaign}`, this.usual).catch(problem => console.warn(problem));
  }

  /** Yes to everything that was asked about a record. */
  async confirm(record) {
    await change(record.id, now => ({ ...now, state: 'kept', entry: { ...now.entry, confirmed: [...new Set([...now.entry.confirmed, ...now.needs.map(need => need.check)])] }, needs: [] }));
    announce({ kept: true });
  }

  async handIn(record, reason) {
    await change(record.id, now => ({ ...now, state: 'handing', reason, refusal: now.refusal || now.needs.map(need => need.words).join(' ') }));
    announce({ kept: true });
  }

  async takeBack(record, why) {
    await this.write(takingBack(record.entry, why), null);
  }

  /** Puts a record into the form: again under its own id if it was never taken, else as a correction. */
  take(record) {
    const { entry } = record;
    Object.assign(this.draft, emptyDraft(), {
      worker: entry.worker, task: entry.task, area: entry.area, step: entry.step ?? '', dose: entry.usv === undefined ? '' : String(entry.usv).replace('.', ','), minutes: Math.round(entry.hours * 60), on: entry.on === dayHere() ? '' : entry.on,
      found: entry.found_usv_per_h === undefined ? '' : String(entry.found_usv_per_h), remark: entry.remark ?? '',
      fresh: true, changing: record.state === 'needs' ? record.id : null, replaces: record.state === 'needs' ? entry.replaces ?? null : record.id,
    });
    this.faults = [];
  }

  /** Puts what somebody handed in into the form, to be settled as corrected. */
  takeHanded({ entry }) {
    this.take({ id: entry.id, state: 'needs', entry });
    this.draft.handed = entry.id;
  }

  /** The usual ones; in an order that stays, so that no button moves away under a glove. */
  people() {
    const everybody = this.choices.people.map(person => person.code);
    const usual = [...this.usual.people, ...(this.choices.worker ? [this.choices.worker] : []), ...(this.task()?.crew ?? []), ...everybody];
    return [...new Set(usual)].filter(code => everybody.includes(code)).slice(0, everybody.length > PEOPLE + 1 ? PEOPLE : PEOPLE + 1)
      .sort((a, b) => everybody.indexOf(a) - everybody.indexOf(b));
  }

  tasks() {
    const known = this.usual.tasks.map(id => this.task(id)).filter(Boolean);
    const order = task => this.choices.tasks.indexOf(task);
    return [...new Set([...known, ...this.choices.tasks])].slice(0, TASKS).sort((a, b) => order(a) - order(b));
  }
}

export { send, sending };
