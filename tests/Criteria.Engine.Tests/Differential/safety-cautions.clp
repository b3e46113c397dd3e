; HS-30, HS-31
(deffunction by-dentist (?id) (is-word (attribute ?id author) dentist))
(deffunction caution.ordered-by-dentist () (some-entry documents (create$ "test order") by-dentist))
(deffunction caution.rhythm-finding () (yes marked_rhythm_finding))
; BAV-01, BAV-02, and what a lapse at work would mean: sleep apnea, mild by every index.
(deffunction caution.more-than-the-index ()
  (if-applies (all-of (pathway.osa) (negate (pathway.at-least-moderate)))
    (any-of (found (pattern.hypoxemia)) (yes daytime_sleepiness) (found (epworth.excessive)) (yes safety_sensitive_work))))
