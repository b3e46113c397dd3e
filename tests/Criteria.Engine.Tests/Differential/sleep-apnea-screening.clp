; STOP-Bang in its forms, and the Epworth cut.
; SB-03
(deffunction stopbang.large-neck () (by-sex (at-least (num neck) 43) (at-least (num neck) 41)))
; SB-01: loud snoring, tiredness or sleepiness, observed apnea, blood pressure; BMI, age, neck, sex.
(deffunction stop-s () (yes habitual_snoring))
(deffunction stop-t () (any-yes daytime_sleepiness fatigue))
(deffunction stop-o () (yes witnessed_apneas))
(deffunction stop-p () (yes hypertension))
(deffunction stopbang-points (?neck)
  (points 1 (stop-s) 1 (stop-t) 1 (stop-o) 1 (stop-p)
    1 (above (body-mass-index) 35) 1 (above (num age) 50) 1 ?neck 1 (is-word sex male)))
; SB-04
(deffunction stopbang-class (?points) (class-of ?points (create$ low intermediate high) (create$ 3 5)))
(deffunction stopbang () (score (stopbang-points (stopbang.large-neck)) (create$ low intermediate high) (create$ 3 5)))
; SB-02
(deffunction stopbang.original-neck ()
  (score (stopbang-points (above (num neck) 40)) (create$ low intermediate high) (create$ 3 5)))
; SB-05
(deffunction stopbang.two-step ()
  (all-of (at-least-of 2 (stop-s) (stop-t) (stop-o) (stop-p))
    (any-of (is-word sex male) (above (body-mass-index) 35) (stopbang.large-neck))))
; SB-06
(deffunction stopbang.two-class () (at-least (stopbang-points (stopbang.large-neck)) 3))
; SB-02, SB-03: the two forms give another class.
(deffunction stopbang.forms-differ ()
  (bind ?new (stopbang-class (stopbang-points (stopbang.large-neck))))
  (bind ?old (stopbang-class (stopbang-points (above (num neck) 40))))
  (if (or (eq ?new unknown) (eq ?old unknown)) then unknown else (truth (neq ?new ?old))))
; SB-07
(deffunction stopbang.bicarbonate () (all-of (stopbang.two-class) (at-least (num bicarbonate) 28)))
; ES-01
(deffunction epworth.excessive () (above (num epworth_total) 10))
