// Entries wait on the phone until the server has them on disk. The phone's own
// copy is the truth until it is handed over; nothing in the field waits for a
// network. Each entry carries its own id, so it is kept once however often it
// is sent.
const name = "aerosteep-queue";

function open() {
  return new Promise((done, failed) => {
    const asked = indexedDB.open(name, 1);
    asked.onupgradeneeded = () => asked.result.createObjectStore("entries", { keyPath: "id" });
    asked.onsuccess = () => done(asked.result);
    asked.onerror = () => failed(asked.error);
  });
}

async function store(mode, act) {
  const db = await open();
  return new Promise((done, failed) => {
    const work = db.transaction("entries", mode);
    const asked = act(work.objectStore("entries"));
    work.oncomplete = () => { db.close(); done(asked && asked.result); };
    work.onerror = () => { db.close(); failed(work.error); };
  });
}

// A UUIDv7 (RFC 9562): 48 bits of milliseconds, then chance. Insecure pages
// have no randomUUID, but they have getRandomValues.
export function newId() {
  const b = crypto.getRandomValues(new Uint8Array(16));
  let ms = Date.now();
  for (let i = 5; i >= 0; i--) { b[i] = ms % 256; ms = Math.floor(ms / 256); }
  b[6] = 0x70 | (b[6] & 0x0f);
  b[8] = 0x80 | (b[8] & 0x3f);
  const hex = [...b].map((x) => x.toString(16).padStart(2, "0")).join("");
  return hex.replace(/^(.{8})(.{4})(.{4})(.{4})(.{12})$/, "$1-$2-$3-$4-$5");
}

// now is the hour of the house: the demo's clock runs at another hour than the
// phone's.
export function now() {
  return new Date(Date.now() + 1000 * Number(document.documentElement.dataset.ahead ?? 0));
}

export const waiting = () => store("readonly", (s) => s.getAll());
const put = (entry) => store("readwrite", (s) => s.put(entry));
const remove = (id) => store("readwrite", (s) => s.delete(id));

// keep takes a form as it was filled in and sends it now or later. Answers
// "sent", "waiting" or "refused"; what is refused at once is not kept, since
// the form is still there to be mended.
export async function keep(action, fields) {
  const entry = { id: newId(), action, fields: { ...fields, at: now().toISOString() } };
  await put(entry);
  const came = await send(entry);
  if (came === "refused") await remove(entry.id);
  return came;
}

// These say that the entry itself is wrong. Anything else may pass: a session
// that ran out, a batch that another phone has yet to send, a full disk.
const judged = [400, 413, 422];

async function send(entry) {
  let answer;
  try {
    answer = await fetch(entry.action, {
      method: "POST",
      headers: { "Content-Type": "application/x-www-form-urlencoded" },
      body: new URLSearchParams({ ...entry.fields, id: entry.id }),
    });
  } catch {
    return "waiting";
  }
  if (answer.ok) { await remove(entry.id); return "sent"; }
  if (!judged.includes(answer.status)) return "waiting";
  await put({ ...entry, refused: true });
  return "refused";
}

let busy = false;

// handOver sends what waits, in any order; what is refused stays, marked.
export async function handOver() {
  if (busy) return;
  busy = true;
  let sent = 0;
  try {
    for (const entry of await waiting()) {
      if (entry.refused) continue;
      const came = await send(entry);
      if (came === "waiting") break;
      if (came === "sent") sent++;
    }
  } finally {
    busy = false;
  }
  await tell(sent);
}

// tell says in the header how many entries wait.
export async function tell(sent = 0) {
  const signal = document.getElementById("signal");
  if (!signal) return;
  const n = (await waiting()).length;
  const words = signal.querySelector("span");
  signal.classList.toggle("quiet", n === 0 && sent === 0);
  if (n > 0) words.textContent = signal.dataset.waiting.replace("{n}", n);
  else if (sent > 0) {
    words.textContent = signal.dataset.handed.replace("{n}", sent);
    setTimeout(() => tell(), 4000);
  } else words.textContent = signal.dataset.instep;
}
