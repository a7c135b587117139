import { html, render } from './vendor.js';

/** Asks once, in a dialog; Esc and "keep" both mean no. The browser gives the focus back. */
export function confirm({ title, text, verb, keep = 'Keep it' }) {
  return new Promise(done => {
    const dialog = document.createElement('dialog');
    dialog.setAttribute('aria-labelledby', 'ask-title');
    const close = answer => { dialog.returnValue = answer; dialog.close(); };
    render(html`
      <h2 id="ask-title">${title}</h2>
      <p>${text}</p>
      <div class="doing">
        <button class="button decide" id="ask-yes" @click=${() => close('yes')}>${verb}</button>
        <button class="button" autofocus @click=${() => close('')}>${keep}</button>
      </div>`, dialog);
    dialog.addEventListener('close', () => { dialog.remove(); done(dialog.returnValue === 'yes'); });
    document.body.append(dialog);
    dialog.showModal();
  });
}
