const VOWELS = "aeiouy";

const hasVowel = (word: string): boolean => {
  for (let i = 0; i < word.length; i++) if (VOWELS.includes(word.charAt(i))) return true;
  return false;
};

function undouble(word: string): string {
  const last = word.charAt(word.length - 1);
  return word.length > 3 && last === word.charAt(word.length - 2) && !VOWELS.includes(last) && !"lsz".includes(last)
    ? word.slice(0, -1)
    : word;
}

/** Light English stemming: plural, -ing, -ed, -ly and a final e go, so that smoke, smokes, smoked and smoking meet. */
export function stem(word: string): string {
  let root = word;
  if (root.length > 3 && root.endsWith("s")) {
    if (root.endsWith("ies") && root.length > 4) root = `${root.slice(0, -3)}y`;
    else if (root.endsWith("sses") || root.endsWith("shes") || root.endsWith("ches") || root.endsWith("xes")) root = root.slice(0, -2);
    else if (!root.endsWith("ss") && !root.endsWith("us") && !root.endsWith("is")) root = root.slice(0, -1);
  }
  if (root.length > 5 && root.endsWith("ing") && hasVowel(root.slice(0, -3))) root = undouble(root.slice(0, -3));
  else if (root.length > 4 && root.endsWith("ed") && hasVowel(root.slice(0, -2))) root = undouble(root.slice(0, -2));
  if (root.length > 5 && root.endsWith("ly")) root = root.slice(0, -2);
  if (root.length > 4 && root.endsWith("y") && !VOWELS.includes(root.charAt(root.length - 2))) root = `${root.slice(0, -1)}i`;
  if (root.length > 3 && root.endsWith("e")) root = root.slice(0, -1);
  return root;
}
