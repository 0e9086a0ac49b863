/** A first draft of a trouble, with what belongs where beside it. */

export const PLACEHOLDER = "WRITE HERE";

export const skeleton = (id: string): string => `# ${id}: a trouble that owners can ask about. Lines that begin with # are notes for you; delete them when you like.
# Replace every "${PLACEHOLDER}". Then ask what it does: npm run -s knowledge -- check knowledge/troubles/${id}.yaml
#
# A sentence that holds a colon, or begins with a figure, a quote or a bracket, goes into "quotes".

# The same word as the file's name.
id: ${id}
# How it is called in a list.
title: "${PLACEHOLDER}: a short name"
# One sentence: what the owner sees, hears or smells.
symptom: "${PLACEHOLDER}: what the owner notices."
# none, low, medium, high or emergency: how much it can hurt someone. With high or emergency name cautions below.
hazard: low
# Ids from knowledge/cautions.yaml that stand first in every answer on it. None: []
cautions: []
# What is true whatever the cause; shown first. None: []
first_of_all: []
# How owners write about it: at least three phrases of two words or more. It is found by these.
words:
  - "${PLACEHOLDER} first phrase"
  - "${PLACEHOLDER} second phrase"
  - "${PLACEHOLDER} third phrase"

# Questions. Each has a name (small letters and hyphens) that the causes below use.
signs:
  # Answered with yes or no.
  seen-before:
    ask: "${PLACEHOLDER}: a question that is answered with yes or no?"
    kind: yes-no
    # Quoted when the answer is yes and speaks for a cause.
    says: "${PLACEHOLDER}: the answer as a statement."
  # Answered by picking one.
  when-noticed:
    ask: "${PLACEHOLDER}: when does it happen?"
    kind: choice
    answers:
      - { id: lighting, label: While lighting }
      - { id: burning, label: While it burns }
      - { id: after, label: After the fire }
  # Answered from the owner's records, so that it need not be asked when the record is young enough.
  # Which records there are: src/trouble/facts.ts. Leave the block out when none helps.
  moisture:
    ask: How dry was the wood, measured on a freshly split face?
    kind: percent
    record: wood-moisture
    fresh_days: 120
    says: "The wood read {value} (wet basis)."
    answers:
      - { id: dry, label: 18 % or less, value: 16 }
      - { id: wet, label: 25 % or more, value: 28 }

# At least two causes. prior: how often it is this one among a hundred cases, before anything is known.
# weighs: for each answer a factor. 1 says nothing, 5 speaks strongly for it, 0.2 strongly against, 0 rules it out.
# For figures name at least two values; between them it is reckoned.
causes:
  first-cause:
    title: "${PLACEHOLDER}: the cause"
    prior: 60
    why: "${PLACEHOLDER}: what goes on, in one or two sentences."
    weighs:
      seen-before: { yes: 4, no: 0.5 }
      when-noticed: { lighting: 0.5, burning: 2, after: 1 }
      moisture: { 16: 0.3, 20: 1, 28: 4 }
    # What to do at once. None: []
    now: []
    before_next_fire:
      - "${PLACEHOLDER}: what to do before the next fire."
    # Whom to call: sweep, builder, ventilation, doctor, authority, supplier, roofer. None: []
    call: []
    # true: no fire until it is cleared.
    no_fire: false
    # "common practice", or a standard, handbook or authority by name.
    source: common practice
  second-cause:
    title: "${PLACEHOLDER}: another cause"
    prior: 40
    why: "${PLACEHOLDER}: what goes on."
    weighs:
      seen-before: { yes: 0.4, no: 1.5 }
      when-noticed: { lighting: 3, burning: 0.6, after: 0.4 }
      moisture: { 16: 2, 28: 0.5 }
    now: []
    before_next_fire:
      - "${PLACEHOLDER}: what to do before the next fire."
    call: []
    source: common practice

# Troubles or how-tos that lie near: their file names without .yaml. None: []
near: []
sources: [common practice]
`;
