// Reads a page's packed data by the description in render/report/packing.h, not by the page's own code.

"use strict";

function unpacked(text) {
  const bytes = Buffer.from(text, "base64"), values = [];
  let at = 0;
  const number = () => {
    let value = 0n, shift = 0n;
    for (;;) {
      const byte = bytes[at++];
      value += BigInt(byte % 128) << shift;
      shift += 7n;
      if (byte < 128) return Number(value);
    }
  };
  while (at < bytes.length) {
    const value = number();
    if (value === 0) { const count = number() + 1; for (let i = 0; i < count; i++) values.push(0); }
    else values.push(value % 2 ? -(value + 1) / 2 : value / 2);
  }
  return values;
}

// Summed over rows of a width.
function rows(text, width) {
  const all = unpacked(text), result = [];
  for (let from = 0; from < all.length; from += width)
    result.push(all.slice(from, from + width).map((v, i) => v + (from ? result[result.length - 1][i] : 0)));
  return result;
}

// Outline of the strip in a state, mm, y down, as the player draws it: along the lower surface and back.
function outline(data, state) {
  const n = data.stations, sums = rows(data.surfaces, 4 * n).map(row => {
    const at = row.slice();
    for (let i = 4; i < at.length; i++) at[i] += at[i - 4];
    return at;
  })[state];
  const points = [];
  for (let i = 0; i < n; i++) points.push([sums[4 * i] * 0.005, -sums[4 * i + 1] * 0.005]);
  for (let i = n - 1; i >= 0; i--) points.push([sums[4 * i + 2] * 0.005, -sums[4 * i + 3] * 0.005]);
  return points;
}

module.exports = {unpacked, rows, outline};
