// Ids of marks are made where they are tapped: version 7, 48 bits of time and 74 of chance. crypto.getRandomValues also works on a
// page without TLS, where crypto.randomUUID does not.

/** @param {number} now milliseconds since 1970 @param {Uint8Array} random 10 bytes of chance @returns {string} */
export function markId(now, random) {
  const bytes = new Uint8Array(16);
  let rest = Math.floor(now);
  for (let i = 5; i >= 0; i--) {
    bytes[i] = rest % 256;
    rest = Math.floor(rest / 256);
  }
  bytes.set(random.subarray(0, 10), 6);
  bytes[6] = (bytes[6] & 0x0f) | 0x70;
  bytes[8] = (bytes[8] & 0x3f) | 0x80;
  const hex = Array.from(bytes, (b) => b.toString(16).padStart(2, "0")).join("");
  return `${hex.slice(0, 8)}-${hex.slice(8, 12)}-${hex.slice(12, 16)}-${hex.slice(16, 20)}-${hex.slice(20)}`;
}
