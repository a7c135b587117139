// Accepting or withdrawing a learnt factor: what, why. Written down, never changed.
import { html, nothing, render } from '../lib/vendor.js';
import { ask } from '../lib/api.js';

/** Resolves with true if it was written down. */
export function acceptFactor({ camp, title, text, verb, body }) {
  return new Promise(resolve => {
    const dialog = document.createElement('dialog');
    dialog.setAttribute('aria-labelledby', 'factor-title');
    const draft = { reason: '', fault: '', done: false, sending: false };
    const send = async event => {
      event.preventDefault();
      if (draft.sending) return;
      draft.fault = draft.reason.trim() === '' ? 'Say why in a few words.' : '';
      if (!draft.fault) {
        draft.sending = true;
        try {
          await ask('POST', `/api/campaigns/${encodeURIComponent(camp.id)}/learnt`, { body: { ...body, reason: draft.reason.trim() } });
          draft.done = true;
          dialog.close();
          return;
        } catch (problem) {
          draft.fault = problem.message;
          draft.sending = false;
        }
      }
      draw();
      dialog.querySelector('#factor-reason').focus();
    };
    const draw = () => render(html`<form @submit=${send} novalidate>
      <h2 id="factor-title">${title}</h2><p>${text}</p>
      <div class="field ${draft.fault ? 'bad' : ''}"><label for="factor-reason">Reason</label>
        ${draft.fault ? html`<p class="message" id="factor-fault" role="alert">${draft.fault}</p>` : nothing}
        <textarea id="factor-reason" required aria-describedby=${draft.fault ? 'factor-fault' : nothing} @input=${event => { draft.reason = event.target.value; }}></textarea></div>
      <div class="doing"><button class="button decide" id="factor-yes">${verb}</button><button type="button" class="button" @click=${() => dialog.close()}>Not now</button></div></form>`, dialog);
    draw();
    dialog.addEventListener('close', () => { dialog.remove(); resolve(draft.done); });
    document.body.append(dialog);
    dialog.showModal();
    dialog.querySelector('#factor-reason').focus();
  });
}
