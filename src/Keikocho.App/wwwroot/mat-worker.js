// Keeps what a tablet needs to open the mat's page without a network: that page, which holds nothing of anybody, and style, script and
// fonts. Nothing else is ever kept, and nothing is answered from here while the laptop can be reached.

const NAME = "keikocho-mat-1";
const PAGE = "/mat";
const FILES = /^\/(css|js|fonts)\/|^\/keikocho\.svg$/;
const PATIENCE = 3000;

self.addEventListener("install", (event) => {
  event.waitUntil(keepPage().then(() => self.skipWaiting()));
});

self.addEventListener("activate", (event) => {
  event.waitUntil((async () => {
    for (const name of await caches.keys()) if (name !== NAME) await caches.delete(name);
    await self.clients.claim();
  })());
});

self.addEventListener("fetch", (event) => {
  const address = new URL(event.request.url);
  if (event.request.method !== "GET" || address.origin !== location.origin) return;
  if (event.request.mode === "navigate" && address.pathname === PAGE) event.respondWith(fromLaptop(event.request, PAGE));
  else if (FILES.test(address.pathname)) event.respondWith(fromLaptop(event.request, event.request));
});

// The page and every file that it names, and every script that those name.
async function keepPage() {
  const cache = await caches.open(NAME);
  const page = await fetch(PAGE, { credentials: "same-origin" });
  if (!page.ok) throw new Error(`The page answered ${page.status}.`);
  const text = await page.clone().text();
  await cache.put(PAGE, page);
  const open = [...text.matchAll(/(?:href|src)="(\/(?:css|js|fonts)\/[^"]+|\/keikocho\.svg)"/g)].map((m) => m[1]);
  const kept = new Set();
  while (open.length > 0) {
    const path = open.pop();
    if (kept.has(path)) continue;
    kept.add(path);
    const file = await fetch(path);
    if (!file.ok) continue;
    const inside = await file.clone().text();
    await cache.put(path, file);
    // Kanji are many and large; those that a name holds are kept when they are first shown.
    if (path.endsWith(".css")) for (const m of inside.matchAll(/url\("?([^")]+)"?\)/g)) if (!m[1].includes("kanji") && !m[1].startsWith("data:")) open.push(new URL(m[1], new URL(path, location.origin)).pathname);
    if (path.endsWith(".js")) for (const m of inside.matchAll(/from "(\.[^"]+)"/g)) open.push(new URL(m[1], new URL(path, location.origin)).pathname);
  }
}

async function fromLaptop(request, key) {
  const cache = await caches.open(NAME);
  const held = await cache.match(key);
  try {
    const answer = await Promise.race([
      fetch(request),
      ...(held ? [new Promise((_, failed) => setTimeout(() => failed(new Error("too slow")), PATIENCE))] : []),
    ]);
    if (answer.ok && !answer.redirected) await cache.put(key, answer.clone());
    return answer;
  } catch (problem) {
    if (held) return held;
    throw problem;
  }
}
