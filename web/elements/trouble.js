import { html } from '../lib/vendor.js';

/** What is shown when a page cannot be: never a blank. */
export function trouble(problem, again) {
  const title = problem.status === 404 ? 'This is not there' : problem.status === 0 ? 'No answer from the server' : 'This page could not be shown';
  return html`<div class="lead"><div><h1>${title}</h1><p class="under">${problem.message}</p></div></div>
    <p><button class="button main" @click=${again}>Try again</button> <a class="button" href="#/campaigns">All campaigns</a></p>`;
}
