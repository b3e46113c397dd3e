; T-08
(deffunction hst.symptoms ()
  (any-yes snoring habitual_snoring witnessed_apneas gasping_choking daytime_sleepiness nonrestorative_sleep fatigue insomnia_complaint
    morning_headache impaired_cognition nocturia impaired_sleep_quality_of_life))
; A report that names the sensor may leave out the entry for airflow. Flow is one signal, by however many sensors.
(deffunction flow () (any-yes channel_airflow channel_nasal_pressure channel_thermal_airflow))
(deffunction effort () (any-yes channel_thoracic_effort channel_abdominal_effort))
(deffunction heart () (any-yes channel_ecg channel_heart_rate))
(deffunction oxygen () (yes channel_oximetry))
; T-02, B-01: the seven named signals.
(deffunction hst.channels-type-ii ()
  (all-of (all-yes channel_eeg channel_eog channel_chin_emg) (heart) (flow) (effort) (oxygen)))
; T-03, B-02: two signals of breathing, heart, oxygen.
(deffunction hst.channels-type-iii ()
  (all-of (at-least-of 2 (flow) (yes channel_thoracic_effort) (yes channel_abdominal_effort)) (heart) (oxygen)))
; T-04, X-14: airflow among three.
(deffunction hst.channels-type-iv ()
  (all-of (flow)
    (at-least-of 2 (yes channel_thoracic_effort) (yes channel_abdominal_effort) (oxygen) (heart)
      (yes channel_position) (yes channel_snore) (yes channel_actigraphy))))
; T-05
(deffunction hst.channels-pat () (all-yes channel_pat channel_oximetry channel_actigraphy))
; T-06
(deffunction hst.covered-test ()
  (any-of (hst.channels-type-ii) (hst.channels-type-iii) (hst.channels-type-iv) (hst.channels-pat)))
; T-07: only Type I is bound to the laboratory.
(deffunction hst.setting () (any-of (is-word recorder "type II" "type III" "type IV" "PAT set") (yes test_attended)))
; T-09, T-10, B-15
(deffunction hst.device-cleared () (yes device_cleared))
(deffunction hst.supervision () (yes test_supervised))
(deffunction hst.test-provider () (yes test_provider_qualifies))
(deffunction hst.local-policy () (yes local_test_policy_met))
; B-14, T-10, X-12: ordered beforehand by the treating physician, PA, NP or CNS. The day of the night itself is open, and so
; are the others whom only the regulation names.
(deffunction day-distance (?id) (days-from (num night.date) (num (attribute ?id date))))
(deffunction compare-days (?id ?how)
  (bind ?days (day-distance ?id))
  (if (empty ?days) then (return unknown))
  (switch ?how (case before then (below ?days 0)) (case on then (equals ?days 0)) (default (at-most ?days 0))))
(deffunction ordered (?id ?how $?who) (all-of (is-word (attribute ?id author) (expand$ ?who)) (compare-days ?id ?how)))
(deffunction order-by-practitioner (?how)
  (some-entry documents (create$ "test order") ordered ?how
    "physician" "nurse practitioner" "physician assistant" "clinical nurse specialist"))
(deffunction order-by-others ()
  (some-entry documents (create$ "test order") ordered before "clinical psychologist" "clinical social worker" "nurse-midwife"))
(deffunction hst.order ()
  (standing met
    (all-of (yes orderer_treats)
      (any-of (all-of (order-by-practitioner on) (negate (order-by-practitioner before)))
        (all-of (order-by-others) (negate (order-by-practitioner on-or-before)))))
    (all-of (yes orderer_treats) (order-by-practitioner before))))
(deffunction hst.facility-order ()
  (all-of (yes testing_facility_independent) (yes orderer_supervises_facility) (no orderer_treats)))
; B-10
(deffunction hst.local-exclusion ()
  (any-yes moderate_lung_disease neuromuscular_weakness heart_failure other_sleep_disorder_suspected))
(deffunction hst.low-probability () (negate (hsat.increased-risk)))
; D-09: by a practitioner who can treat.
(deffunction visit-before (?id) (all-of (signed ?id)
  (is-word (attribute ?id author) "physician" "nurse practitioner" "physician assistant" "clinical nurse specialist")
  (compare-days ?id on-or-before)))
(deffunction hst.evaluation () (some-entry documents (create$ "clinical evaluation") visit-before))
(deffunction hst.repeat-reason () (if-applies (at-least (num earlier_home_tests) 1) (yes repeat_reason_recorded)))
; B-11, X-19: without a credential the local policy decides.
(deffunction hst.interpreter ()
  (standing met (is-word interpreter_credential "none")
    (is-word interpreter_credential "ABSM" "ABMS board" "AOA board" "board-eligible" "staff of an accredited center")))
; B-12, B-11: CGS and WPS ask for accreditation; NGS for a director in sleep medicine and no mobile laboratory, with
; accreditation or a hospital. Elsewhere what fits every wording is enough, and anything less is open.
(deffunction accredited () (is-word facility_accreditation "AASM" "The Joint Commission" "ACHC"))
(deffunction fits-every-wording () (all-of (accredited) (no mobile_laboratory) (yes director_certified)))
(deffunction hst.facility ()
  (standing met
    (all-of (is-word contractor "Noridian" "Palmetto" "other") (negate (fits-every-wording)))
    (any-of (fits-every-wording)
      (all-of (is-word contractor "CGS" "WPS") (accredited))
      (all-of (is-word contractor "NGS") (no mobile_laboratory) (yes director_certified)
        (any-of (accredited) (yes facility_is_hospital))))))
; B-13
(deffunction hst.instruction () (any-of (yes loan.demonstrated) (all-yes taught_by_phone_or_video phone_support)))
; T-11, T-12: not in a certified hospital, not in the laboratory.
(deffunction elsewhere () (is-word recorder "type II" "type III" "type IV" "PAT set"))
(deffunction hst.supplier-part () (all-of (yes supplier_handled_test) (no supplier_is_certified_hospital) (elsewhere)))
; T-13: save an attended study in a facility.
(deffunction hst.affiliated-supplier () (all-of (yes supplier_affiliated) (elsewhere)))
; B-01 to B-06
(deffunction code (?code $?channels) (all-of (is-word test_code ?code) (all-of (expand$ ?channels))))
(deffunction hst.code-fits ()
  (bind ?breathing (any-of (flow) (yes channel_pat)))
  (any-of (code "G0398" (hst.channels-type-ii)) (code "G0399" (hst.channels-type-iii))
    (code "G0400" (any-of (hst.channels-type-iv) (hst.channels-pat)))
    (code "95800" (heart) (oxygen) ?breathing (yes report_gives_sleep_time))
    (code "95801" (heart) (oxygen) ?breathing (no report_gives_sleep_time))
    (code "95806" (heart) (oxygen) (flow) (effort))))
; B-07, B-08, X-22: 2027-01-01 is day 739981.
(deffunction hst.code-accepted ()
  (bind ?early (below (num coverage.service_date) 739981))
  (bind ?g (is-word test_code "G0398" "G0399" "G0400")) (bind ?u (is-word test_code "95800" "95801" "95806"))
  (standing met
    (any-of (all-of ?u (is-word contractor "WPS" "Palmetto" "NGS" "other") ?early) (all-of (any-of ?g ?u) (negate ?early)))
    (all-of ?early (any-of ?g (all-of ?u (is-word contractor "Noridian" "CGS"))))))
; B-09: below six hours.
(deffunction hst.short-recording () (if-applies (below (num recording_time) 360) (yes reduced_service)))
; B-16
(deffunction hst.date-of-service ()
  (bind ?days (days-from (num night.date) (num coverage.service_date)))
  (if (empty ?days) then unknown else (negate (equals ?days 0))))
(deffunction hst.coverage ()
  (all-of (hst.symptoms) (hst.covered-test) (hst.setting) (hst.device-cleared) (found (hst.order)) (hst.supervision)
    (hst.test-provider) (hst.local-policy)))
(deffunction hst.claim ()
  (all-of (hst.coverage) (hst.code-fits) (found (hst.code-accepted))
    (if (eq (hst.short-recording) not-applicable) then met else (hst.short-recording))))
