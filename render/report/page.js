// Starts the players when they come near the screen, and makes the stills that replace them on paper.

const page = JSON.parse(document.getElementById("page-data").textContent);
const players = new Map();

function dataOf(holder) { return JSON.parse(document.getElementById(holder.dataset.stroke).textContent); }

function start(holder) {
  if (!players.has(holder)) players.set(holder, makePlayer(holder, dataOf(holder), page));
  return players.get(holder);
}

// Before, pressed and free, beside one another.
function makeStills(holder) {
  const stills = holder.parentNode.querySelector(".stills");
  if (stills.firstChild) return;
  const stroke = start(holder).stroke, length = stroke.keys[stroke.keys.length - 1].at;
  const touch = stroke.passages.find(p => p.name === "Press").at;
  for (const [name, at] of [["Before", touch], ["Pressed", stroke.pressed], ["Free", length]]) {
    const figure = html("figure", {}, stills);
    const svg = make("svg", {role: "img", "aria-label": name + ": stroke " + stroke.number + ", " + stroke.name}, figure);
    const drawing = makeDrawing(stroke, svg, page.palette), instant = instantAt(stroke, at);
    drawing.options.words = 9;
    drawing.options.width = 225;
    drawing.draw(instant);
    const angles = stroke.bends.map(b => b.name + " " + degrees(drawing.bendNow(b, instant).angle)).join(", ");
    const hits = drawing.hitsNow(instant).map(h => " Interference: " + h.words + ".").join("");
    html("figcaption", {}, figure, name + ": travel " + fixed(instant.travel, 2) + " mm, " + angles + "." + hits);
  }
}

const holders = Array.from(document.querySelectorAll(".player"));
if ("IntersectionObserver" in window) {
  const watch = new IntersectionObserver(seen => {
    for (const entry of seen) if (entry.isIntersecting) { watch.unobserve(entry.target); start(entry.target); }
  }, {rootMargin: "600px"});
  holders.forEach(holder => watch.observe(holder));
} else {
  holders.forEach(start);
}
window.addEventListener("beforeprint", () => holders.forEach(makeStills));

// A table that needs no scrolling is no stop of the Tab key.
const fit = new ResizeObserver(boxes => {
  for (const box of boxes) {
    if (box.target.scrollWidth > box.target.clientWidth + 1) box.target.setAttribute("tabindex", "0");
    else box.target.removeAttribute("tabindex");
  }
});
document.querySelectorAll(".scroll, .wide").forEach(box => fit.observe(box));
