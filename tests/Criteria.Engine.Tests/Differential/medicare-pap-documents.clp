; ---- dates of papers ----------------------------------------------------------------------------------------------
(deffunction lies (?name ?other ?first ?last)
  (bind ?days (days-from (day ?other) (day ?name)))
  (if (empty ?days) then (return unknown))
  (all-of (if (eq ?first none) then met else (at-least ?days ?first)) (if (eq ?last none) then met else (at-most ?days ?last))))
(deffunction dated (?id ?other ?first ?last) (lies (attribute ?id date) ?other ?first ?last))
; What a finding lends to another, worked out once in a case.
(deffunction finding (?name)
  (bind ?kept (symbol-to-instance-name (sym-cat kept- ?name)))
  (if (not (instance-existp ?kept)) then (bind ?says (funcall ?name)) (make-instance ?kept of GIVEN (word ?says)))
  (found (send ?kept get-word)))
(deffunction papers ($?kinds) ?kinds)
(deffunction by-treating (?id)
  (is-word (attribute ?id author) "physician" "nurse practitioner" "physician assistant" "clinical nurse specialist"))
(deffunction ordered-pap (?id) (is-word (attribute ?id item) "pap"))
(deffunction signed-order (?id) (all-of (ordered-pap ?id) (signed ?id)))

; What is asked depends on the claim.
(deffunction pap.claim-kind () (if (known coverage.stage) then met else unknown))
; O-01, O-05, O-06
(deffunction valid-form (?id)
  (is-word (attribute ?id signature_form) "handwritten" "electronic" "illegible with log or attestation" "stamp for a proven disability"))
(deffunction whole-order (?id)
  (all-of (signed-order ?id) (by-treating ?id) (has ?id identifies_patient) (has ?id describes_item) (has ?id states_quantity)
    (has ?id names_practitioner) (valid-form ?id) (if (known (attribute ?id date)) then met else unknown)))
(deffunction pap.written-order () (some-entry documents (papers "order") whole-order))
; O-02
(deffunction order-by (?id ?when) (all-of (signed-order ?id) (dated ?id ?when none 0)))
(deffunction pap.order-in-time ()
  (any-of (some-entry documents (papers "order") order-by claim_date) (some-entry documents (papers "order") order-by coverage.service_date)))
; O-06: an unsigned order counts for nothing unless another one is signed; an unsigned record may be attested.
(deffunction unsigned (?id) (negate (signed ?id)))
(deffunction unsigned-order (?id) (all-of (ordered-pap ?id) (unsigned ?id)))
(deffunction pap.unsigned-order ()
  (all-of (some-entry documents (papers "order") unsigned-order) (negate (some-entry documents (papers "order") signed-order))))
(deffunction pap.unsigned-note () (some-entry documents (papers "clinical evaluation" "sleep test report" "titration report") unsigned))
; O-05, O-06
(deffunction doubtful-form (?id) (is-word (attribute ?id signature_form) "stamp" "illegible"))
(deffunction pap.signature-form () (some-entry documents (papers "order" "clinical evaluation" "sleep test report") doubtful-form))
; O-04, V-08
(deffunction order-for (?id ?code) (all-of (ordered-pap ?id) (is-word (attribute ?id device) ?code)))
(deffunction order-for-another (?id ?code)
  (all-of (ordered-pap ?id) (negate (is-word (attribute ?id device) ?code))))
(deffunction only-other-order (?code)
  (all-of (is-word device_code ?code) (some-entry documents (papers "order") order-for-another ?code)
    (negate (some-entry documents (papers "order") order-for ?code))))
(deffunction pap.order-device () (any-of (only-other-order "E0601") (only-other-order "E0470")))
; R-02, O-05: the visit and the report, in a valid form, by the date of service.
(deffunction note-in-time (?id)
  (all-of (by-treating ?id) (signed ?id) (valid-form ?id) (dated ?id coverage.service_date none 0)))
(deffunction report-in-time (?id) (all-of (signed ?id) (valid-form ?id) (dated ?id coverage.service_date none 0)))
(deffunction pap.records-in-time ()
  (all-of (some-entry documents (papers "clinical evaluation") note-in-time) (some-entry documents (papers "sleep test report") report-in-time)))
; R-03, P-13
(deffunction on-file (?id) met)
(deffunction pap.weak-evidence ()
  (all-of (some-entry documents (papers "supplier form" "supplier attestation") on-file)
    (negate (some-entry documents (papers "clinical evaluation") by-treating))))
; R-04, R-05
(deffunction proof (?id)
  (all-of (has ?id identifies_patient) (has ?id states_address) (has ?id describes_item) (has ?id states_quantity)
    (dated ?id coverage.service_date none 0)
    (any-of
      (all-of (is-word (attribute ?id delivery_method) "handed over") (is-word (attribute ?id received_by) "patient" "designee"))
      (all-of (is-word (attribute ?id delivery_method) "shipped") (has ?id links_carrier) (has ?id delivery_evidence)))))
(deffunction pap.delivery () (some-entry documents (papers "delivery record") proof))
; The line of dates
; A paper without a date lies nowhere for certain, whatever else is on file.
(deffunction with-date (?id ?kinds ?fits $?more)
  (if (empty (day (attribute ?id date))) then unknown else (some-entry documents ?kinds ?fits ?id (expand$ ?more))))
(deffunction report-up-to (?report ?order)
  (all-of (dated ?report night.date 0 none) (lies (attribute ?order date) (attribute ?report date) 0 none)))
(deffunction order-on-report (?id)
  (all-of (signed-order ?id) (with-date ?id (papers "sleep test report") report-up-to)))
(deffunction pap.order-after-report () (some-entry documents (papers "order") order-on-report))
(deffunction order-up-to (?order ?delivery ?first ?last)
  (all-of (signed-order ?order) (lies (attribute ?delivery date) (attribute ?order date) ?first ?last)))
(deffunction delivered-on-order (?id ?first ?last) (with-date ?id (papers "order") order-up-to ?first ?last))
(deffunction delivered (?first ?last) (some-entry documents (papers "delivery record") delivered-on-order ?first ?last))
(deffunction pap.delivery-after-order () (delivered 0 none))
; C-01, C-09: from the fourth month on the visit belongs to the line.
(deffunction pap.date-order ()
  (if-applies
    (any-of (negate (finding pap.started-before)) (is-word coverage.stage "initial" "continued" "after failed trial" "switched device"))
    (all-of (finding pap.evaluation-before-test) (finding pap.test-order) (finding pap.test-report) (finding pap.order-after-report)
      (finding pap.delivery-after-order)
      (any-of (negate (finding pap.started-before)) (is-word coverage.stage "initial" "after failed trial" "switched device")
        (finding pap.continued.visit) (finding pap.continued.late-visit)))))
; P-05, P-06: the note itself names what the second route needs.
(deffunction names-condition (?id) (all-of (by-treating ?id) (signed ?id) (has ?id records_listed_condition) (dated ?id coverage.service_date none 0)))
(deffunction pap.condition-documented ()
  (if-applies
    (all-of (at-least (payer-rate) 5) (below (payer-rate) 15)
      (any-of (negate (finding pap.started-before)) (negate (is-word coverage.stage "replacement"))))
    (some-entry documents (papers "clinical evaluation") names-condition)))
; P-10
(deffunction taught-well (?id)
  (all-of (has ?id covers_use_and_care) (is-word (attribute ?id taught) "patient" "caregiver in the home")))
(deffunction pap.instruction-content () (some-entry documents (papers "instruction record") taught-well))
; B-11, X-19
(deffunction valid-on-night (?id) (lies (attribute ?id valid_until) night.date 0 none))
(deffunction ended-before-night (?id) (lies (attribute ?id valid_until) night.date none -1))
(deffunction pap.interpreter-credential ()
  (all-of (negate (some-entry documents (papers "credential record") valid-on-night))
    (any-of (negate (yes local_test_policy_met)) (some-entry documents (papers "credential record") ended-before-night))))
; T-07, T-08
(deffunction pap.test-setting () (all-of (is-word recorder "type I") (no test_attended)))
(deffunction pap.no-symptoms ()
  (negate (any-yes habitual_snoring witnessed_apneas gasping_choking daytime_sleepiness nonrestorative_sleep fatigue insomnia_complaint
    morning_headache impaired_cognition nocturia impaired_sleep_quality_of_life)))
; O-08
(deffunction encounter (?id ?order)
  (all-of (any-of (has ?id in_person) (has ?id telehealth)) (signed ?id)
    (funcall in-months-before (attribute ?id date) (attribute ?order date) 6)))
(deffunction order-on-encounter (?id)
  (all-of (signed-order ?id) (with-date ?id (papers "clinical evaluation") encounter)))
(deffunction pap.face-to-face ()
  (standing (yes on_required_list) (all-of (delivered 0 0) (negate (delivered 1 none)))
    (negate (all-of (some-entry documents (papers "order") order-on-encounter) (delivered 1 none)))))
; P-15, I-01
(deffunction pap.diagnosis-code () (negate (is-word diagnosis_code "G47.33")))
; C-12, C-20, C-21, M-01, M-02: what the claim is for
(deffunction pap.coverage-for-stage ()
  (any-of
    (all-of (is-word coverage.stage "initial") (finding pap.initial-coverage) (finding pap.device-covered))
    (all-of (is-word coverage.stage "continued") (finding pap.continued-coverage) (finding pap.device-covered))
    (all-of (is-word coverage.stage "after failed trial") (finding pap.failed-trial) (finding pap.device-covered))
    (all-of (is-word coverage.stage "switched device") (finding pap.switch))
    (all-of (is-word coverage.stage "replacement") (finding pap.replacement) (finding pap.device-code))
    (all-of (is-word coverage.stage "entering medicare") (finding pap.entering) (finding pap.device-code))))
; M-01, M-02, C-09: after a late visit only what comes later
(deffunction pap.modifier-kx ()
  (bind ?late (all-of (is-word coverage.stage "continued") (finding pap.continued.late-visit) (negate (finding pap.continued.visit))))
  (standing met (all-of (finding pap.coverage-for-stage) ?late (lies reevaluated_on coverage.service_date 0 0))
    (all-of (finding pap.coverage-for-stage) (any-of (negate ?late) (lies reevaluated_on coverage.service_date none 0)))))
; M-03, M-04, M-06
(deffunction pap.modifier-ga () (all-of (negate (finding pap.modifier-kx)) (yes abn_on_file)))
(deffunction pap.modifier-gz () (all-of (negate (finding pap.modifier-kx)) (no abn_on_file)))
(deffunction pap.modifier-ey () (negate (finding pap.written-order)))
; M-05
(deffunction pap.modifier-conflict ()
  (any-of (is-word claim_modifier "none")
    (all-of (is-word claim_modifier "KX") (negate (finding pap.modifier-kx)))
    (all-of (is-word claim_modifier "GA") (negate (finding pap.modifier-ga)))
    (all-of (is-word claim_modifier "GZ") (negate (finding pap.modifier-gz)))))
; T-13
(deffunction pap.supplier-affiliated ()
  (all-of (yes supplier_affiliated) (any-of (is-word recorder "type II" "type III" "type IV" "PAT set") (no test_attended))))
; P-18
(deffunction pap.research-route () (all-of (is-word coverage.stage "initial") (negate (finding pap.sleep-test))))
; C-22: the two statements stand for the delivery of a device that was brought along. R-02, P-10: records of the first item.
; R-06: continued need, where it is asked for.
(deffunction not-asked (?name)
  (bind ?says (funcall ?name)) (if (eq ?says not-applicable) then met else (if (eq ?says unknown) then unknown else not-met)))
(deffunction pap.file-ready ()
  (if-applies (if (known coverage.stage) then met else unknown)
    (all-of (finding pap.coverage-for-stage) (finding pap.written-order) (finding pap.order-in-time)
      (any-of (finding pap.delivery) (all-of (is-word coverage.stage "entering medicare") (finding pap.entering.possession)))
      (any-of (all-of (finding pap.records-in-time) (finding pap.instruction-content))
        (all-of (finding pap.started-before) (is-word coverage.stage "replacement" "entering medicare")))
      (any-of (finding pap.continued-need) (not-asked pap.continued-need))
      (negate (finding pap.diagnosis-code)) (negate (finding pap.face-to-face)) (negate (finding pap.supplier-affiliated)))))
