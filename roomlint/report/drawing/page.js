"use strict";
(() => {
  const said = document.getElementById("said");
  const all = (of, what) => Array.from(of.querySelectorAll(what));
  const parts = (text) => (text || "").split(" ").filter(Boolean);

  // What a finger finds, in pixels; a pointer finds less.
  const touched = window.matchMedia("(max-width: 900px), (pointer: coarse)");
  const least = () => touched.matches ? 30 : 14;

  // How much larger a view must be for its marks to be found.
  function lacking(figure) {
    const widths = all(figure, ".mark[role=button]").map((one) => one.getBoundingClientRect().width).filter(Boolean);
    return widths.length ? least() / Math.min(...widths) : 1;
  }

  function zoom(figure, factor, spot) {
    const pan = figure.querySelector(".pan");
    const svg = pan.querySelector("svg");
    const was = parseFloat(svg.style.getPropertyValue("--z")) || 1;
    const now = factor === null ? 1 : Math.min(8, Math.max(1, was * factor));
    const box = pan.getBoundingClientRect();
    const [across, down] = spot ? [spot.clientX - box.left, spot.clientY - box.top] : [pan.clientWidth / 2, pan.clientHeight / 2];
    const x = (pan.scrollLeft + across) / was;
    const y = (pan.scrollTop + down) / was;
    svg.style.setProperty("--z", String(now));
    figure.classList.toggle("near", now > 1.4);
    pan.scrollLeft = x * now - across;
    pan.scrollTop = y * now - down;
  }

  function bring(mark) {
    const figure = mark.closest("figure");
    const pan = figure.querySelector(".pan");
    if (lacking(figure) > 1.01) {
      zoom(figure, lacking(figure));
    }
    const at = mark.getBoundingClientRect();
    const of = pan.getBoundingClientRect();
    pan.scrollLeft += at.left + at.width / 2 - of.left - of.width / 2;
    pan.scrollTop += at.top + at.height / 2 - of.top - of.height / 2;
    if (of.top < 0 || of.bottom > window.innerHeight || of.top > window.innerHeight) {
      figure.scrollIntoView({block: "nearest"});
    }
  }

  function choose(room, item, from) {
    const again = item && item.classList.contains("on");
    all(room, ".on").forEach((one) => one.classList.remove("on"));
    all(room, ".lit").forEach((one) => one.classList.remove("lit"));
    all(room, ".finding > button").forEach((one) => one.setAttribute("aria-pressed", "false"));
    all(room, ".mark[role=button]").forEach((one) => one.setAttribute("aria-pressed", "false"));
    room.classList.toggle("choosing", Boolean(item) && !again);
    if (!item || again) {
      said.textContent = item ? "Nothing chosen." : "";
      return;
    }
    item.classList.add("on");
    const button = item.querySelector("button");
    button.setAttribute("aria-pressed", "true");
    const keys = new Set(parts(item.dataset.keys));
    all(room, "[data-key]").forEach((one) => one.classList.toggle("lit", keys.has(one.dataset.key) && !one.classList.contains("mark")));
    const marks = all(room, "[data-of]").filter((one) => parts(one.dataset.of).includes(item.id));
    marks.forEach((one) => {
      one.classList.add("on");
      if (one.classList.contains("mark")) {
        one.setAttribute("aria-pressed", "true");
      }
    });
    said.textContent = button.textContent;
    if (from === "list") {
      const first = marks.find((one) => one.classList.contains("mark")) || room.querySelector(".lit");
      if (first) {
        bring(first);
      }
    } else {
      item.scrollIntoView({block: "nearest"});
    }
  }

  all(document, ".room").forEach((room) => {
    all(room, ".finding > button").forEach((button) => {
      button.addEventListener("click", () => choose(room, button.parentElement, "list"));
    });
    all(room, ".mark[role=button]").forEach((mark) => {
      const go = () => choose(room, document.getElementById(mark.dataset.of), "mark");
      mark.setAttribute("aria-pressed", "false");
      mark.addEventListener("click", go);
      mark.addEventListener("keydown", (event) => {
        if (event.key === "Enter" || event.key === " ") {
          event.preventDefault();
          go();
        }
      });
    });
    room.addEventListener("keydown", (event) => {
      if (event.key === "Escape") {
        choose(room, null);
      }
    });
    all(room, "[data-layer]").forEach((box) => {
      box.addEventListener("change", () => room.classList.toggle("no-" + box.dataset.layer, !box.checked));
    });
    all(room, "[data-zoom]").forEach((button) => {
      const factor = {in: 1.5, out: 1 / 1.5, fit: null}[button.dataset.zoom];
      button.addEventListener("click", () => {
        const figure = button.closest("figure");
        zoom(figure, factor > 1 ? Math.max(factor, lacking(figure)) : factor);
      });
    });
    all(room, "figure.view:not(.chart)").forEach((figure) => {
      // Where marks are too small for a finger, the first tap enlarges: which of them it met is chance.
      figure.querySelector(".pan").addEventListener("click", (event) => {
        if (touched.matches && lacking(figure) > 1.01) {
          event.stopPropagation();
          zoom(figure, lacking(figure), event);
          said.textContent = "Enlarged.";
        }
      }, {capture: true});
    });
    all(room, "figure.chart").forEach(readable);
  });

  function readable(figure) {
    const rows = all(figure, "tr[data-x]");
    if (!rows.length) {
      return;
    }
    const heads = all(figure, "thead th").map((one) => one.textContent);
    const svg = figure.querySelector("svg");
    const cursor = figure.querySelector(".cursor");
    const out = figure.querySelector(".readout");
    const at = Object.fromEntries(["left", "wide", "low", "high", "full"].map((name) => [name, parseFloat(figure.dataset[name])]));
    const octave = figure.dataset.octave === "1";
    const share = (x) => octave ? Math.log(x / at.low) / Math.log(at.high / at.low) : (x - at.low) / (at.high - at.low);
    let number = -1;
    function show(next) {
      number = Math.min(rows.length - 1, Math.max(0, next));
      const row = rows[number];
      const x = at.left + at.wide * share(parseFloat(row.dataset.x));
      cursor.setAttribute("x1", x);
      cursor.setAttribute("x2", x);
      cursor.classList.add("on");
      const cells = all(row, "th,td").map((one) => one.textContent);
      out.textContent = heads.map((head, place) => head + " " + cells[place]).join(" · ");
    }
    svg.addEventListener("pointermove", (event) => {
      const box = svg.getBoundingClientRect();
      const x = ((event.clientX - box.left) / box.width * at.full - at.left) / at.wide;
      let best = 0;
      rows.forEach((row, place) => {
        if (Math.abs(share(parseFloat(row.dataset.x)) - x) < Math.abs(share(parseFloat(rows[best].dataset.x)) - x)) {
          best = place;
        }
      });
      show(best);
    });
    figure.querySelector(".pan").addEventListener("keydown", (event) => {
      const step = {ArrowRight: 1, ArrowLeft: -1}[event.key];
      if (step) {
        event.preventDefault();
        show(number + step);
      }
    });
  }
})();
