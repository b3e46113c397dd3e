; That such an entry is there at all.
(deffunction listed (?id) met)
; OA-03: diagnosed; that PAP is not tolerated, not accepted or not preferred speaks for it. No limit of severity.
(deffunction appliance.option () (if-applies (pathway.osa) met))
; OA-01: snoring that the patient wants treated, and no sleep apnea by staged sleep with the widest rule for hypopneas.
(deffunction appliance.option-snoring ()
  (if-applies (all-of (any-yes snoring habitual_snoring) (yes wants_snoring_treated) (is-word recorder "type I" "type II")
    (adequacy.gradable)
    (if (no-rate ahi_3a sleep_time) then not-met else (below (rate ahi_3a sleep_time) 5)) (negate (pathway.osa))) met))
(deffunction appliance-listed () (some-entry therapy (create$ "oral appliance") listed))
(deffunction for-an-appliance (?id) (is-word (attribute ?id item) "oral appliance"))
(deffunction appliance-ordered () (some-entry documents (create$ "order") for-an-appliance))
(deffunction appliance.dental-readiness () (if-applies (any-of (appliance-listed) (appliance-ordered)) (yes dental_ready)))
; OA-02
(deffunction as-recommended (?id)
  (all-of (has ?id custom_titratable) (has ?id by_qualified_dentist) (has ?id prescribed_by_sleep_physician)))
(deffunction appliance.custom-by-dentist ()
  (if-applies (appliance-listed) (some-entry therapy (create$ "oral appliance") as-recommended)))
; OA-04, OA-06: visits after the start. The list of authors knows no sleep physician; whoever may treat will do.
(deffunction days-since-start (?trial ?document) (days-from (num (attribute ?trial start)) (num (attribute ?document date))))
(deffunction began-before (?trial ?document) (above (days-since-start ?trial ?document) 0))
(deffunction began-not-before (?trial ?document) (at-most (days-since-start ?trial ?document) 0))
(deffunction visit-after (?id $?authors)
  (all-of (is-word (attribute ?id author) (expand$ ?authors))
    (some-entry therapy (create$ "oral appliance") began-before ?id)))
(deffunction diagnosis-before (?id)
  (all-of (is-word (attribute ?id author) "physician") (has ?id records_osa_diagnosis)
    (some-entry therapy (create$ "oral appliance") began-not-before ?id)))
(deffunction appliance.dental-visit ()
  (if-applies (appliance-listed) (some-entry documents (create$ "clinical evaluation") visit-after "dentist")))
(deffunction appliance.physician-visit ()
  (if-applies (appliance-listed) (some-entry documents (create$ "clinical evaluation") visit-after
    "physician" "nurse practitioner" "physician assistant" "clinical nurse specialist")))
; FU-10: on a physician's diagnosis, made by the day it began
(deffunction appliance.physician-diagnosis ()
  (if-applies (appliance-listed) (some-entry documents (create$ "clinical evaluation") diagnosis-before)))
; OA-03, SU-01: how PAP went, beside another therapy
(deffunction pap-went (?id)
  (is-word (attribute ?id outcome) "continued" "not tolerated" "not effective" "declined" "stopped for another reason"))
(deffunction appliance.pap-on-record ()
  (if-applies (any-of (some-entry therapy (create$ "oral appliance" "nerve stimulation" "surgery") listed) (appliance-ordered))
    (some-entry therapy (create$ "PAP") pap-went)))
