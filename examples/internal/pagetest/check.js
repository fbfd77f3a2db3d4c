// check returns what is wrong with the page, a sentence each.
function check() {
  const bad = [];
  const words = (n) => (n.textContent || "").trim().slice(0, 40);
  const seen = (n) => { const r = n.getBoundingClientRect(); return r.width > 0 && r.height > 0 && getComputedStyle(n).visibility !== "hidden"; };

  if (!document.documentElement.lang) bad.push("no language");
  if (!document.title.trim()) bad.push("no title");
  if (!document.querySelector("main")) bad.push("no main part");
  const heads = [...document.querySelectorAll("h1, h2, h3, h4, h5, h6")];
  if (heads.filter((h) => h.tagName === "H1").length !== 1) bad.push("not one h1");
  let level = 0;
  for (const h of heads) {
    const n = Number(h.tagName[1]);
    if (n > level + 1) bad.push(`heading skips a level: ${words(h)}`);
    if (!words(h)) bad.push("empty heading");
    level = n;
  }
  for (const t of document.querySelectorAll("table")) {
    if (!t.caption || !words(t.caption)) bad.push(`table without caption: ${words(t)}`);
    for (const th of t.querySelectorAll("th")) {
      if (!th.scope) bad.push(`table head without scope: ${words(th)}`);
      if (!words(th)) bad.push(`empty table head: ${words(t.caption || t)}`);
    }
  }
  for (const f of document.querySelectorAll("input, select, textarea")) {
    if (!f.labels.length && !f.getAttribute("aria-label")) bad.push(`field without label: ${f.id || f.name}`);
  }
  for (const p of document.querySelectorAll("img, svg")) {
    const name = p.getAttribute("alt") || p.getAttribute("aria-label");
    if (!name && p.getAttribute("aria-hidden") !== "true") bad.push("picture without words");
    if (p.tagName === "svg" && name && p.getAttribute("role") !== "img") bad.push("picture without its role");
  }
  for (const a of document.querySelectorAll("a, button, summary")) {
    if (!words(a) && !a.getAttribute("aria-label")) bad.push("link or button without words");
  }
  const ids = [...document.querySelectorAll("[id]")].map((n) => n.id);
  for (const id of new Set(ids.filter((id, i) => ids.indexOf(id) !== i))) bad.push(`id twice: ${id}`);
  const over = document.documentElement.scrollWidth - document.documentElement.clientWidth;
  if (over > 0) bad.push(`page is ${over} pixels wider than the screen`);

  // Contrast and size of words, with every part opened.
  for (const d of document.querySelectorAll("details")) d.open = true;
  const channels = (c) => { const m = c.match(/[\d.]+/g); return m ? m.map(Number) : [0, 0, 0, 0]; };
  const luminance = (c) => {
    const [r, g, b] = c.slice(0, 3).map((v) => { v /= 255; return v <= 0.04045 ? v / 12.92 : ((v + 0.055) / 1.055) ** 2.4; });
    return 0.2126 * r + 0.7152 * g + 0.0722 * b;
  };
  const contrast = (a, b) => { const [x, y] = [luminance(a), luminance(b)].sort((p, q) => q - p); return (x + 0.05) / (y + 0.05); };
  const opaque = (c) => c.length === 3 || c[3] === 1;
  const over2 = (c, under) => { const a = c.length === 4 ? c[3] : 1; return [0, 1, 2].map((i) => c[i] * a + under[i] * (1 - a)); };
  const background = (n) => {
    let found = [];
    for (; n; n = n.parentElement) {
      const c = channels(getComputedStyle(n).backgroundColor);
      if (c.length === 4 && c[3] === 0) continue;
      found.push(c);
      if (opaque(c)) break;
    }
    return found.reverse().reduce((under, c) => over2(c, under), [255, 255, 255]);
  };
  // What is painted under a word of a picture, from the top down.
  const under = (text) => {
    text.scrollIntoView({ block: "center", inline: "center" });
    const r = text.getBoundingClientRect();
    const out = [];
    for (const part of [0.15, 0.5, 0.85]) {
      for (const n of document.elementsFromPoint(r.left + r.width * part, r.top + r.height * 0.5)) {
        if (n.ownerSVGElement !== text.ownerSVGElement || /^(text|line|polyline)$/.test(n.tagName)) continue;
        const fill = getComputedStyle(n).fill;
        if (fill === "none" || Number(getComputedStyle(n).fillOpacity) < 1) continue;
        out.push(channels(fill));
        break;
      }
    }
    return out.length ? out : [background(text.ownerSVGElement.parentElement)];
  };
  const walker = document.createTreeWalker(document.body, NodeFilter.SHOW_TEXT);
  const done = new Set();
  for (let t = walker.nextNode(); t; t = walker.nextNode()) {
    const n = t.parentElement;
    if (!t.textContent.trim() || done.has(n) || /^(STYLE|SCRIPT|style|title|desc)$/.test(n.tagName) || !seen(n)) continue;
    done.add(n);
    const style = getComputedStyle(n);
    const svg = n.ownerSVGElement;
    let size = parseFloat(style.fontSize);
    if (svg) size *= svg.getScreenCTM().a;
    if (size < 11) bad.push(`words of ${size.toFixed(1)} pixels: ${words(n)}`);
    const least = size >= 24 || (size >= 18.66 && Number(style.fontWeight) >= 700) ? 3 : 4.5;
    const ink = channels(svg ? style.fill : style.color);
    for (const paper of svg ? under(n) : [background(n)]) {
      const ratio = contrast(over2(ink, paper), paper);
      if (ratio < least) bad.push(`contrast ${ratio.toFixed(1)}: ${words(n)}`);
    }
  }
  return [...new Set(bad)];
}
