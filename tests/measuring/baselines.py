"""Baselines beside `npm run measure`: the models of tests/training/baseline_models.py, taught the training set and asked the measuring set."""
import glob
import json
import os
import sys

HERE = os.path.dirname(os.path.abspath(__file__))
sys.path.insert(0, os.path.join(HERE, "../training"))

import sklearn
from baseline_models import EMBEDDING, SVM, encoder, nearest, svm


def lines(path):
    with open(path, encoding="utf-8") as file:
        return [json.loads(line) for line in file if line.strip()]


training = [one for path in sorted(glob.glob(os.path.join(HERE, "../training/*.jsonl"))) for one in lines(path)]
measured = [one for one in lines(os.path.join(HERE, (sys.argv[1] if len(sys.argv) > 1 else "") + "topics.jsonl")) if one["topic"] != "out-of-scope"]


def report(rank):
    ranked = rank([one["text"] for one in measured])
    for style, chosen in (("plain", lambda s: s != "oblique"), ("oblique", lambda s: s == "oblique")):
        pairs = [(one, topics) for one, topics in zip(measured, ranked) if chosen(one["style"])]
        hit = lambda one, topics: any(topic == one["topic"] or topic in one["also"] for topic in topics)
        first = sum(hit(one, topics[:1]) for one, topics in pairs)
        three = sum(hit(one, topics[:3]) for one, topics in pairs)
        print(f"  {style:8} first {100 * first / len(pairs):.1f} %, first three {100 * three / len(pairs):.1f} %  ({len(pairs)} messages)")


print(f"scikit-learn {sklearn.__version__}: {SVM}, trained on the same training set")
report(svm(training))

try:
    encode = encoder()
except Exception as problem:
    print(f"sentence embeddings: not run ({type(problem).__name__}: {problem})")
else:
    known = encode([one["text"] for one in training])
    print(EMBEDDING)
    report(lambda texts: nearest(encode(texts), known, [one["topic"] for one in training]))
