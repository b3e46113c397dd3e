; OA-03: diagnosed, and PAP is not tolerated, not accepted or not preferred. No limit of severity.
(deffunction appliance.option ()
  (if-applies (all-of (pathway.osa) (any-of (pathway.pap-refused) (yes prefers_other_than_pap))) met))
; OA-01: snoring that the patient wants treated, and no sleep apnea in the laboratory. Both rules have to leave it below 5.
(deffunction below-five (?index) (if (no-rate ?index sleep_time) then not-met else (below (rate ?index sleep_time) 5)))
(deffunction appliance.option-snoring ()
  (if-applies (all-of (any-yes snoring habitual_snoring) (yes wants_snoring_treated) (is-word recorder "type I")
    (adequacy.gradable) (or-else-below)) met))
