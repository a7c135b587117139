import { html, render } from './vendor.js';

/** Asks for a few words in a dialog; null when nothing shall happen. */
export function reasonFor({ title, text, verb, needed = false }) {
  return new Promise(done => {
    const dialog = document.createElement('dialog');
    dialog.setAttribute('aria-labelledby', 'reason-title');
    let answer = null;
    const yes = event => {
      event.preventDefault();
      const box = dialog.querySelector('textarea');
      if (needed && box.value.trim() === '') { box.setAttribute('aria-invalid', 'true'); box.focus(); return; }
      answer = box.value.trim();
      dialog.close();
    };
    render(html`<h2 id="reason-title">${title}</h2><form @submit=${yes} novalidate>
      <div class="field wide"><label for="reason-text">${text}</label><textarea id="reason-text" maxlength="500" rows="3"></textarea></div>
      <div class="doing"><button class="button decide" id="reason-yes">${verb}</button><button type="button" class="button" @click=${() => dialog.close()}>Leave it</button></div></form>`, dialog);
    dialog.addEventListener('close', () => { dialog.remove(); done(answer); });
    document.body.append(dialog);
    dialog.showModal();
  });
}
