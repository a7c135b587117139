// Choosing an option: what, why, and whether it goes into the plan at once. Written down, never changed.
import { html, nothing, render } from '../lib/vendor.js';
import { ask } from '../lib/api.js';

/** Resolves with the decision, or null if nothing was decided. */
export function chooseOption({ camp, run, row }) {
  return new Promise(resolve => {
    const dialog = document.createElement('dialog');
    dialog.setAttribute('aria-labelledby', 'choose-title');
    const draft = { reason: '', take: false, fault: '', made: null, sending: false };
    const send = async event => {
      event.preventDefault();
      if (draft.sending) return;
      if (draft.reason.trim() === '') {
        draft.fault = 'Say why in a few words.';
        draw();
        dialog.querySelector('#choose-reason').focus();
        return;
      }
      draft.sending = true;
      try {
        const answer = await ask('POST', `/api/campaigns/${encodeURIComponent(camp.id)}/decisions`, {
          body: { kind: 'option', subject: row.option ?? 'plan', text: `Chosen: ${row.name}.`, reason: draft.reason.trim(), run: run.number, ...(draft.take ? { take: true } : {}) },
          etag: draft.take ? camp.etag : undefined,
        });
        draft.made = { ...answer.body, taken: draft.take };
        dialog.close();
      } catch (problem) {
        draft.fault = problem.status === 412 ? 'The plan was changed in the meantime. Close this, look again and decide then.' : problem.message;
        draft.sending = false;
        draw();
      }
    };
    const draw = () => render(html`<form @submit=${send} novalidate>
      <h2 id="choose-title">Choose ${row.letter}: ${row.name}?</h2>
      <p>The choice is written down with your name, the reason and run ${run.number}. It cannot be changed later.</p>
      <div class="field ${draft.fault ? 'bad' : ''}"><label for="choose-reason">Reason</label>
        ${draft.fault ? html`<p class="message" id="choose-fault" role="alert">${draft.fault}</p>` : nothing}
        <textarea id="choose-reason" required aria-describedby=${draft.fault ? 'choose-fault' : nothing} @input=${event => { draft.reason = event.target.value; }}></textarea></div>
      ${row.option === undefined ? nothing : html`<div class="tick field"><span><input type="checkbox" id="choose-take" @change=${event => { draft.take = event.target.checked; }}>
        <label for="choose-take">Carry it out: make its changes part of the plan and take it off the list</label></span></div>`}
      <div class="doing"><button class="button decide" id="choose-yes">Write it down</button><button type="button" class="button" @click=${() => dialog.close()}>Not now</button></div></form>`, dialog);
    draw();
    dialog.addEventListener('close', () => { dialog.remove(); resolve(draft.made); });
    document.body.append(dialog);
    dialog.showModal();
    dialog.querySelector('#choose-reason').focus();
  });
}
