; SEV-08: whole numbers, none 0 to 5, mild 6 to 20, moderate 21 to 40, severe above. What lies between 5 and 6, or between 20
; and 21, has no name. Asked for only before an operation; a graded night as everywhere.
(deffunction between-bands (?rate)
  (any-of (all-of (above ?rate 5) (below ?rate 6)) (all-of (above ?rate 20) (below ?rate 21))))
; The last class begins above 40, not at it.
(deffunction surgical-class (?rate)
  (if (empty ?rate) then (return unknown))
  (if (eq met (above ?rate 40)) then (return severe))
  (if (neq not-met (above ?rate 40)) then (return unknown))
  (class-of ?rate (create$ none mild moderate) (create$ 6 21)))
(deffunction surgical (?index ?night ?recorder)
  (if (no-rate ?index ?night) then not-applicable else
    (standing (all-of (yes surgery_planned) (adequacy.gradable) ?recorder) (between-bands (rate ?index ?night))
      (surgical-class (rate ?index ?night)))))
(deffunction at-home () (is-word recorder "type III" "type IV" "PAT set"))
(deffunction in-staged-sleep () (any-of (is-word recorder "type I" "type II") (yes channel_eeg)))
(deffunction perioperative.grade-rei-4 () (surgical rei_4 monitoring_time (at-home)))
(deffunction perioperative.grade-rei-3 () (surgical rei_3 monitoring_time (at-home)))
(deffunction perioperative.grade-ahi-4 () (surgical ahi_4 sleep_time (in-staged-sleep)))
(deffunction perioperative.grade-ahi-3a () (surgical ahi_3a sleep_time (in-staged-sleep)))
