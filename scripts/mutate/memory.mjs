/**
 * The library remembers what it worked out for an object (a WeakMap), and test files keep their objects: what was worked out before a
 * change would hide it. So every WeakMap made after this module was loaded can be emptied.
 */
let generation = 0;

export function forgetWhatWasRemembered() {
  generation += 1;
}

const Kept = globalThis.WeakMap;

globalThis.WeakMap = class WeakMap extends Kept {
  #of = generation;
  #values = new Kept();

  #current() {
    if (this.#of !== generation) {
      this.#of = generation;
      this.#values = new Kept();
    }
    return this.#values;
  }
  get(key) {
    return this.#current().get(key);
  }
  has(key) {
    return this.#current().has(key);
  }
  set(key, value) {
    this.#current().set(key, value);
    return this;
  }
  delete(key) {
    return this.#current().delete(key);
  }
};
