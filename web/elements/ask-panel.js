// One question at a time: its form, and the answer below it. What was typed and answered stays while the page is open.
import { html, nothing } from '../lib/vendor.js';
import { say } from '../lib/focus.js';
import { Asking, exposureAt } from '../lib/exposure.js';
import { fieldsOf } from '../forms/groups.js';
import { idOf } from '../forms/boxes.js';

const kept = new Map();

/** The panel of several questions; {@code place} tells one page's panel from another's. */
export function askPanel({ camp, tables, redraw, questions, place, preset = {}, heading }) {
  const room = roomOf(camp, place);
  const question = questions.find(each => each.key === room.key) ?? questions[0];
  const session = sessionOf(camp, room, question, preset);
  return html`<section class="panel ask" id="ask-${place}" aria-labelledby="ask-${place}-title">
    <h2 id="ask-${place}-title" tabindex="-1">${heading}</h2>
    <div class="ask-in"><div class="ask-list" role="group" aria-label="Questions">${questions.map(each => html`<button type="button" class="button ${each === question ? 'chosen' : ''}"
        aria-pressed=${each === question ? 'true' : 'false'} data-ask=${each.key} @click=${() => { room.key = each.key; redraw(); }}>${each.words}</button>`)}</div>
      <div class="ask-one" data-asked=${question.key}>${asked({ camp, tables, redraw, question, session })}</div></div></section>`;
}

/** Turns a page's panel to a question with some of its fields filled in. */
export function turnTo(camp, place, key, given) {
  const room = roomOf(camp, place);
  room.key = key;
  room.given.set(key, given);
  room.sessions.delete(key);
}

/** Brings the panel into view, with the keyboard on it. */
export function goToPanel(place) {
  const title = document.getElementById(`ask-${place}-title`);
  title?.focus({ preventScroll: true });
  title?.scrollIntoView({ block: 'start' });
}

/** The form and the answer of one question, alone. */
export function asked({ camp, tables, redraw, question, session, level = 3 }) {
  const prefix = `ask-${question.key}`;
  const inside = path => path.slice(prefix.length + 1);
  const ctx = {
    camp, tables, redraw, root: session.draft, faultAt: path => session.faults.get(inside(path)),
    opened: (path, count) => session.opened(inside(path), count), remember: (path, event) => session.remember(inside(path), event),
  };
  const send = async event => {
    event.preventDefault();
    const waiting = session.ask();
    redraw();
    const found = await waiting;
    session.asOf = camp?.etag ?? null;
    redraw();
    if (found) say(question.says?.(session.answer, camp) ?? 'Answered.');
    else document.getElementById(`${prefix}-summary`)?.focus();
  };
  return html`${level === 2 ? html`<h2>${question.title}</h2>` : html`<h3>${question.title}</h3>`}${question.hint ? html`<p class="small muted">${question.hint}</p>` : nothing}
    <form class="ask-form" novalidate autocomplete="off" @submit=${send}>
      ${session.failed ? faults(session, prefix) : nothing}
      ${fieldsOf(session.fields, session.draft, prefix, ctx)}
      <div class="form-foot"><button class="button main" type="submit" aria-disabled=${session.busy ? 'true' : nothing}>${session.busy ? 'Working it out …' : 'Work it out'}</button></div></form>
    ${session.answer ? html`<div class="answer">${camp && session.asOf !== camp.etag ? html`<p class="mark decide">The plan has changed since: work it out again.</p>` : nothing}
      ${question.answer(session.answer, camp, { redraw, room: session })}</div>` : nothing}`;
}

function faults(session, prefix) {
  const count = session.faults.size + session.general.length;
  return html`<div class="summary" id="${prefix}-summary" tabindex="-1" role="group" aria-label="Not worked out"><p class="label">Not worked out: ${count === 1 ? 'one thing' : `${count} things`} to put right</p>
    <ul>${session.general.map(text => html`<li>${text}</li>`)}
      ${[...session.faults].map(([path, text]) => html`<li><a href="#${idOf(`${prefix}.${path}`)}" @click=${event => { event.preventDefault(); document.getElementById(idOf(`${prefix}.${path}`))?.focus(); }}>${text}</a></li>`)}</ul></div>`;
}

function roomOf(camp, place) {
  const key = `${camp?.id ?? ''}/${place}`;
  if (!kept.has(key)) kept.set(key, { key: '', sessions: new Map(), given: new Map() });
  return kept.get(key);
}

function sessionOf(camp, room, question, preset) {
  if (!room.sessions.has(question.key)) {
    const value = { ...question.start(camp, preset), ...room.given.get(question.key) };
    room.sessions.set(question.key, new Asking({ fields: question.fields, value, etag: null, address: exposureAt(camp, typeof question.path === 'function' ? question.path(preset) : question.path), method: question.method ?? 'POST' }));
  }
  return room.sessions.get(question.key);
}
