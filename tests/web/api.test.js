// What is said when no answer comes back.
const { ask } = await load('/lib/api.js');

// LAW: a request whose answer was lost may have been taken: nobody says that nothing was saved, and a question to the server saves nothing.
test('a_lost_answer_is_not_called_unsaved', async () => {
  const real = window.fetch;
  window.fetch = () => Promise.reject(new TypeError('network'));
  const said = {};
  try {
    for (const method of ['GET', 'POST', 'PUT', 'DELETE']) said[method] = await ask(method, '/api/nothing').catch(problem => problem.message);
  } finally {
    window.fetch = real;
  }
  equal(['POST', 'PUT', 'DELETE'].map(method => /is not known: look first/.test(said[method]) && !/Nothing was saved/.test(said[method])), [true, true, true]);
  equal(said.GET, 'The server does not answer. Try again when the network is back.');
});
