; A ruleset may rest on one of these steps without resting on what the others read, which is then not loaded: so they call by
; name.
; DX-01, DX-05, HS-30, PA-01: either edition will do; both already ask for a night that is not scored by program alone.
(deffunction pathway.osa () (any-of (found (osa.icsd-3)) (found (osa.icsd-3-tr))))
; SEV-04, for an index that may be graded. One scoring rule is enough.
(deffunction index-reaches (?index ?night ?recorder ?n)
  (if (no-rate ?index ?night) then not-met else
    (all-of (adequacy.gradable) ?recorder (at-least (rate ?index ?night) ?n))))
(deffunction some-index-reaches (?n)
  (any-of (index-reaches rei_4 monitoring_time (funcall home-recorder) ?n) (index-reaches rei_3 monitoring_time (funcall home-recorder) ?n)
    (index-reaches ahi_4 sleep_time (funcall staged-sleep) ?n) (index-reaches ahi_3a sleep_time (funcall staged-sleep) ?n)))
(deffunction pathway.at-least-moderate () (some-index-reaches 15))
(deffunction pathway.severe () (some-index-reaches 30))
; OA-03, SU-01: intolerant or unaccepting. Without effect is neither.
(deffunction outcome-among (?id $?words) (is-word (attribute ?id outcome) (expand$ ?words)))
(deffunction pathway.pap-refused () (some-entry therapy (create$ "PAP") outcome-among "not tolerated" "declined"))
; DX-09, DX-11, DX-14, DX-16, DX-18
(deffunction pathway.review-first ()
  (bind ?parts (create$))
  (foreach ?finding (create$ pattern.central-predominant severity.not-obstructive pattern.periodic-breathing pattern.hypoxemia
      pattern.obesity-hypoventilation)
    (bind ?parts (create$ ?parts (found (funcall ?finding)))))
  (any-of ?parts))
