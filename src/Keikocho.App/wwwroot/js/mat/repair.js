// The repair of pairs without a network: at most two groups that stood change, and of the ways there are the first in register order.
// The same rule stands in docs/sums/pair.md, step by step, and in the program; both are held to the same vectors.

const MOST_CHANGED = 2;

/** @typedef {{may: string[], middle: string, share: string[]}} Table who may work with whom, by places in the register */

/**
 * @param {Table} table
 * @param {number[][]} standing groups by places: one with an adult, two, or three with the middle in the middle
 * @param {number[]} here places of those who are here
 * @param {number} adults how many adults can partner a child
 * @returns {number[][] | null} groups in mat order; null where the laptop has to be asked
 */
export function mend(table, standing, here, adults) {
  // Step 1: what still stands, and who is loose.
  const present = new Set(here);
  const grouped = new Set(standing.flat());
  const kept = [];
  const loose = [...present].filter((c) => !grouped.has(c));
  let changed = 0;
  for (const group of standing) {
    const left = group.filter((c) => present.has(c));
    if (left.length === group.length && stands(table, left, adults)) {
      kept.push(left.length === 3 && left[0] > left[2] ? [left[2], left[1], left[0]] : left.length === 2 ? left.sort(upward) : left);
      continue;
    }
    loose.push(...left);
    if (left.length > 0) changed++;
  }
  kept.sort((a, b) => Math.min(...a) - Math.min(...b));

  // Step 2: nothing more is opened, then one group, then two; the first that does.
  for (let more = 0; more + changed <= MOST_CHANGED; more++) {
    for (const opened of choices(kept.length, more)) {
      const pool = [...loose, ...opened.flatMap((i) => kept[i])].sort(upward);
      const rest = kept.filter((_, i) => !opened.includes(i));
      const seated = seat(table, pool, rest.every((g) => g.length === 2), adults);
      if (seated) return [...rest, ...seated].sort((a, b) => Math.min(...a) - Math.min(...b));
    }
  }
  return null;
}

/** @param {number} a @param {number} b */
const upward = (a, b) => a - b;

/** @param {Table} table @param {number} a @param {number} b */
const pair = (table, a, b) => a !== b && table.may[a][b] === "1";

/** @param {Table} table @param {number} one @param {number} middle @param {number} other */
const three = (table, one, middle, other) =>
  one !== other && table.middle[middle] === "1" && pair(table, one, middle) && pair(table, middle, other) && table.share[one][other] === "1";

/** @param {Table} table @param {number[]} group @param {number} adults */
function stands(table, group, adults) {
  if (group.length === 1) return adults > 0;
  return group.length === 2 ? pair(table, group[0], group[1]) : three(table, group[0], group[1], group[2]);
}

/** Sets of so many of the kept groups, in the order of the mat. @param {number} groups @param {number} many @returns {number[][]} */
function choices(groups, many) {
  if (many === 0) return [[]];
  const all = [];
  for (let i = 0; i < groups; i++) {
    if (many === 1) all.push([i]);
    else for (let j = i + 1; j < groups; j++) all.push([i, j]);
  }
  return all;
}

/**
 * Step 3: the loose ones among themselves; an odd one with an adult, else a three, and neither where there is one already.
 * @param {Table} table @param {number[]} pool @param {boolean} oddIsFree @param {number} adults @returns {number[][] | null}
 */
function seat(table, pool, oddIsFree, adults) {
  if (pool.length % 2 === 0) return pairs(table, pool);
  if (!oddIsFree) return null;
  if (adults > 0) {
    for (const one of pool) {
      const rest = pairs(table, pool.filter((c) => c !== one));
      if (rest) return [...rest, [one]];
    }
  }
  for (const middle of pool) {
    for (const one of pool) {
      for (const other of pool) {
        if (one >= other || one === middle || other === middle || !three(table, one, middle, other)) continue;
        const rest = pairs(table, pool.filter((c) => c !== middle && c !== one && c !== other));
        if (rest) return [...rest, [one, middle, other]];
      }
    }
  }
  return null;
}

/** The first with the earliest partner that leaves the rest a way, and so on. @param {Table} table @param {number[]} pool @returns {number[][] | null} */
function pairs(table, pool) {
  if (pool.length === 0) return [];
  for (let i = 1; i < pool.length; i++) {
    if (!pair(table, pool[0], pool[i])) continue;
    const rest = pairs(table, [...pool.slice(1, i), ...pool.slice(i + 1)]);
    if (rest) return [[pool[0], pool[i]], ...rest];
  }
  return null;
}
