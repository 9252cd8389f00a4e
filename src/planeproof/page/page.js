"use strict";
// Steps through the rows of a proof sheet, opens what a link leads into, and unfolds everything for print.
// Without it the whole page is there all the same.
(() => {
  const APART = 170; // ms between two steps at least: under six changes a second, so never more than three flashes
  let stepped = -APART;
  let current = null;

  const rowsOf = (sheet) =>
    [...sheet.querySelectorAll(".row")].filter((row) => row.getClientRects().length > 0);

  function show(sheet, row) {
    sheet.querySelectorAll(".row[aria-current]").forEach((each) => each.removeAttribute("aria-current"));
    row.setAttribute("aria-current", "step");
    const rows = rowsOf(sheet);
    sheet.querySelector(".at").textContent = `Row ${rows.indexOf(row) + 1} of ${rows.length}`;
    row.focus({ preventScroll: true });
    row.scrollIntoView({ block: "start", behavior: "instant" });
    current = sheet;
  }

  function step(sheet, by) {
    if (performance.now() - stepped < APART) return;
    stepped = performance.now();
    const rows = rowsOf(sheet);
    const at = rows.findIndex((row) => row.hasAttribute("aria-current"));
    const start = by > 0 ? 0 : rows.length - 1;
    const next = at < 0 ? start : Math.min(rows.length - 1, Math.max(0, at + by));
    show(sheet, rows[next]);
  }

  function unfold(element) {
    for (let each = element; each; each = each.parentElement) {
      if (each instanceof HTMLDetailsElement) each.open = true;
    }
  }

  const sheets = [...document.querySelectorAll(".proof")];
  const isShown = (sheet) => sheet.getClientRects().length > 0;
  for (const sheet of sheets) {
    const steps = sheet.querySelector(".steps");
    steps.hidden = false;
    steps.addEventListener("click", (event) => {
      const by = event.target.closest("button")?.dataset.step;
      if (by === "broken") show(sheet, sheet.querySelector(".row.broken"));
      else if (by) step(sheet, Number(by));
    });
  }

  document.addEventListener("keydown", (event) => {
    const by = { ArrowLeft: -1, ArrowRight: 1 }[event.key];
    if (!by || event.ctrlKey || event.metaKey || event.altKey || event.shiftKey) return;
    if (event.target.closest("pre, .table")) return; // there these keys scroll sideways
    const own = event.target.closest(".proof");
    const sheet = own ?? (current && isShown(current) ? current : sheets.find(isShown));
    if (!sheet) return;
    event.preventDefault();
    if (!event.repeat) step(sheet, by);
  });

  function follow() {
    const target = document.getElementById(decodeURIComponent(location.hash.slice(1)));
    if (!target) return;
    unfold(target);
    const sheet = target.closest(".proof");
    current = sheet ?? target.querySelector(".proof") ?? current; // the keys go on where the link has led
    if (sheet && target.matches(".row")) show(sheet, target);
    else target.scrollIntoView({ behavior: "instant" });
  }
  addEventListener("hashchange", follow);
  if (location.hash) follow();

  let folded = [];
  addEventListener("beforeprint", () => {
    folded = [...document.querySelectorAll("details:not([open])")];
    folded.forEach((each) => (each.open = true));
  });
  addEventListener("afterprint", () => folded.forEach((each) => (each.open = false)));
})();
