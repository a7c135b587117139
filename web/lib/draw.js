// Pictures are drawn in real pixels and drawn again when their place changes width.
export class Drawn extends HTMLElement {
  #data;
  #width = 0;
  #watch = new ResizeObserver(([entry]) => {
    const width = Math.floor(entry.contentRect.width);
    if (width === this.#width || width === 0) return;
    this.#width = width;
    requestAnimationFrame(() => this.#redraw());
  });

  connectedCallback() { this.#watch.observe(this); }
  disconnectedCallback() { this.#watch.disconnect(); this.#width = 0; }

  set data(data) {
    this.#data = data;
    this.#redraw();
  }

  get data() { return this.#data; }

  #redraw() {
    if (this.#width > 0 && this.#data) this.draw(this.#data, this.#width);
  }
}
