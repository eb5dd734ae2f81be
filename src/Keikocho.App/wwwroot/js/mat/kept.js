// What a tablet keeps of an evening: the marks that wait, in the order of the thumb, and the last that the laptop told it. Both live in
// the browser's own database, so that a reload, a closed browser or a flat battery loses none of it.

const NAME = "keikocho-mat";
const VERSION = 1;

/** @returns {Promise<IDBDatabase>} */
function open() {
  return new Promise((done, failed) => {
    const request = indexedDB.open(NAME, VERSION);
    request.onupgradeneeded = () => {
      request.result.createObjectStore("outbox", { keyPath: "sequence" });
      request.result.createObjectStore("kept");
    };
    request.onsuccess = () => done(request.result);
    request.onerror = () => failed(request.error);
    request.onblocked = () => failed(new Error("The browser’s database is held by another window."));
  });
}

export class Kept {
  /** @type {IDBDatabase} */
  #database;

  /** @param {IDBDatabase} database */
  constructor(database) {
    this.#database = database;
  }

  static async open() {
    return new Kept(await open());
  }

  /** Puts marks into the outbox, all of them or none; when this returns, they survive. @param {object[]} marks */
  async add(marks) {
    await this.#write("outbox", (store) => {
      for (const mark of marks) store.add(mark);
    });
  }

  /** Everything that waits, oldest first. @returns {Promise<any[]>} */
  waiting() {
    return this.#read("outbox", (store) => store.getAll());
  }

  /** Takes a mark out, once the laptop has it. @param {number} sequence */
  async remove(sequence) {
    await this.#write("outbox", (store) => store.delete(sequence));
  }

  /** Changes a mark that stays: the laptop refused it, and why. @param {object} mark */
  async change(mark) {
    await this.#write("outbox", (store) => store.put(mark));
  }

  /** @param {string} key @returns {Promise<any>} */
  get(key) {
    return this.#read("kept", (store) => store.get(key));
  }

  /** @param {string} key @param {any} value */
  async set(key, value) {
    await this.#write("kept", (store) => (value === undefined ? store.delete(key) : store.put(value, key)));
  }

  /** Forgets the evening: names and all; what waits stays. */
  async forget() {
    await this.#write("kept", (store) => store.clear());
  }

  /** @param {string} name @param {(store: IDBObjectStore) => IDBRequest} ask @returns {Promise<any>} */
  #read(name, ask) {
    return new Promise((done, failed) => {
      const request = ask(this.#database.transaction(name, "readonly").objectStore(name));
      request.onsuccess = () => done(request.result);
      request.onerror = () => failed(request.error);
    });
  }

  /** Done when it is on disk, not before. @param {string} name @param {(store: IDBObjectStore) => void} change @returns {Promise<void>} */
  #write(name, change) {
    return new Promise((done, failed) => {
      const transaction = this.#database.transaction(name, "readwrite", { durability: "strict" });
      change(transaction.objectStore(name));
      transaction.oncomplete = () => done();
      transaction.onabort = () => failed(transaction.error);
      transaction.onerror = () => failed(transaction.error);
    });
  }
}
