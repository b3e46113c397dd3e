; SU-01, SU-02: below 40, and from 40 on.
(deffunction surgery.recommended-talk () (all-of (pathway.pap-refused) (below (body-mass-index) 40)))
(deffunction surgery.talk-not-advised-against () (all-of (pathway.pap-refused) (at-least (body-mass-index) 40)))
(deffunction surgery.option-referral () (if-applies (all-of (pathway.osa) (pathway.pap-refused)) met))
; SU-05
(deffunction pressure-trouble (?id) (has ?id pressure_side_effects))
(deffunction surgery.option-pressure ()
  (if-applies (all-of (pathway.osa) (below (body-mass-index) 40) (some-entry therapy (create$ "PAP") pressure-trouble)) met))
; HN-03: more than 15 per hour on PAP, or not more than four hours on five nights a week, or unwilling,
; which a trial that was declined or not tolerated shows.
(deffunction pap-failed (?id)
  (any-of (above (num (attribute ?id residual_rate)) 15) (below (num (attribute ?id nights_above_4h)) 5)
    (outcome-among ?id "not tolerated" "declined")))
(deffunction stimulation.pap-failure () (some-entry therapy (create$ "PAP") pap-failed))
; HN-01: polysomnography, an index from 15 to 65; central and mixed below a quarter, which exactly a quarter leaves open.
(deffunction polysomnography () (is-word recorder "type I" "type II"))
(deffunction ahi-within (?index ?high)
  (all-of (at-least (rate ?index sleep_time) 15) (at-most (rate ?index sleep_time) ?high)))
(deffunction stimulation-index (?high) (any-of (ahi-within ahi_4 ?high) (ahi-within ahi_3a ?high)))
(deffunction quarter () (scaled (sum-of obstructive_apneas mixed_apneas central_apneas hypopneas) 0.25))
(deffunction central-and-mixed () (sum-of central_apneas mixed_apneas))
(deffunction stimulation.published-list ()
  (standing (polysomnography)
    (all-of (at-least-times (central-and-mixed) 1 (quarter)) (at-least-times (quarter) 1 (central-and-mixed)))
    (all-of (at-least (num age) 22) (below (body-mass-index) 35) (stimulation-index 65) (less (central-and-mixed) (quarter)))))
; HN-02: to 40, and whether 40 itself is inside nobody has said.
(deffunction stimulation.label-figures ()
  (standing (polysomnography) (equals (body-mass-index) 40) (all-of (stimulation-index 100) (at-most (body-mass-index) 40))))
(deffunction stimulation.outside-label () (above (body-mass-index) 40))
(deffunction stimulation.option ()
  (if-applies (all-of (pathway.osa) (pathway.at-least-moderate) (stimulation.pap-failure)) met))
