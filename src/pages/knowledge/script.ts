/** The page's own search. Without it everything is still there to read. */
export const SCRIPT = `
(() => {
  "use strict";
  document.documentElement.classList.add("js");
  const input = document.getElementById("search");
  const list = document.getElementById("found");
  const count = document.getElementById("count");
  const fold = (words) => words.toLowerCase().normalize("NFKD").replace(/[\\u0300-\\u036f]/g, "").replace(/ß/g, "ss");
  const entries = [...document.querySelectorAll("[data-entry]")].map((node) => {
    const title = (node.querySelector("h3") || node).textContent.trim();
    const text = node.textContent.replace(/\\s+/g, " ").trim();
    return { id: node.id || node.querySelector(".body").id, title, text, folded: fold(text), head: fold(title) };
  });
  let vocabulary = null;
  const away = (a, b) => {
    if (Math.abs(a.length - b.length) > 2) return 9;
    let row = [...Array(b.length + 1).keys()];
    for (let i = 1; i <= a.length; i++) {
      const next = [i];
      for (let j = 1; j <= b.length; j++) next[j] = Math.min(next[j - 1] + 1, row[j] + 1, row[j - 1] + (a[i - 1] === b[j - 1] ? 0 : 1));
      row = next;
    }
    return row[b.length];
  };
  // a word nobody wrote is read as the nearest one that somebody did
  const mended = (word) => {
    if (word.length < 4) return word;
    vocabulary = vocabulary || [...new Set(entries.flatMap((entry) => entry.folded.split(/[^\\p{L}\\p{N}]+/u)))];
    let best = word;
    let least = word.length > 6 ? 3 : 2;
    for (const one of vocabulary) {
      const far = away(word, one);
      if (far < least) { least = far; best = one; }
    }
    return best;
  };
  const search = (words) => {
    const wanted = fold(words).split(/[^\\p{L}\\p{N}]+/u).filter((word) => word.length > 1);
    if (wanted.length === 0) return [];
    const meant = wanted.map((word) => (entries.some((entry) => entry.folded.includes(word)) ? word : mended(word)));
    return entries.map((entry) => {
      let score = 0;
      for (const word of meant) {
        if (entry.head.includes(word)) score += 10;
        else if (entry.folded.includes(word)) score += 1 + Math.min(3, entry.folded.split(word).length - 1) / 4;
        else return null;
      }
      return { entry, score, word: meant[0] };
    }).filter(Boolean).sort((a, b) => b.score - a.score).slice(0, 30);
  };
  const snippet = ({ entry, word }) => {
    const at = Math.max(0, entry.folded.indexOf(word) - 50);
    return (at > 0 ? "… " : "") + entry.text.slice(at, at + 150) + (entry.text.length > at + 150 ? " …" : "");
  };
  const show = () => {
    const found = search(input.value);
    list.replaceChildren(...found.map((one) => {
      const item = document.createElement("li");
      const link = document.createElement("a");
      link.href = "#" + one.entry.id;
      link.textContent = one.entry.title;
      const words = document.createElement("div");
      words.className = "small";
      words.textContent = snippet(one);
      item.append(link, words);
      return item;
    }));
    count.textContent = input.value.trim() === "" ? "" : found.length + " " + count.dataset.word;
  };
  input.addEventListener("input", show);
  const reveal = () => {
    const node = location.hash.length > 1 ? document.getElementById(decodeURIComponent(location.hash.slice(1))) : null;
    const entry = node && node.closest("details");
    if (entry) { entry.open = true; node.scrollIntoView(); }
  };
  addEventListener("hashchange", reveal);
  reveal();
  let closed = [];
  addEventListener("beforeprint", () => { closed = [...document.querySelectorAll("details:not([open])")]; closed.forEach((one) => { one.open = true; }); });
  addEventListener("afterprint", () => { closed.forEach((one) => { one.open = false; }); closed = []; });
})();
`;
