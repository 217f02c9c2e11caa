// A few words for checks, and what is counted of them.

"use strict";

let passed = 0;
const failures = [];
let chapter = "";

function about(words) { chapter = words; }

function check(holds, words, found) {
  if (holds) { passed++; return; }
  failures.push(chapter + ": " + words + (found === undefined ? "" : " (found " + JSON.stringify(found) + ")"));
}

function near(found, wanted, allowed, words) {
  check(Math.abs(found - wanted) <= allowed, words + ": wanted " + wanted + " within " + allowed, found);
}

// Prints what failed and ends the program with a status.
function close() {
  for (const f of failures) console.log("FAILED " + f);
  console.log(passed + " checks passed, " + failures.length + " failed");
  process.exitCode = failures.length || passed < 40 ? 1 : 0;
}

module.exports = {about, check, near, close};
